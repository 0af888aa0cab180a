/**
 * Keeping the meter's current out of restraint and high-voltage circuits: fuses that feed nothing else come out, and
 * no reading is offered that sends its current through what is marked.
 */
import { type Circuit, REFERENCE } from "../circuit/index.js";
import { contactsOfPart, type Loom, type Part } from "../loom/index.js";
import { forbidden } from "../readings/index.js";

/** Share of the meter's current that may pass a marked wire or igniter: none, but for rounding. */
const NONE = 1e-9;
/** The same for the other pins of a marked unit. Common practice, no source. */
const LITTLE = 0.02;
/** Pins of a marked unit on lines that every unit shares, read with all of them on it, and the ground behind. */
const SHARED: ReadonlySet<string> = new Set(["bus high", "bus low", "ground"]);

const NEVER: ReadonlySet<string> = new Set(["pyrotechnic", "high voltage"]);
/** Is it of a circuit that is never measured? */
export function marked(marks: readonly string[] | undefined): boolean {
	return marks?.some((mark) => NEVER.has(mark)) ?? false;
}

/** Contact, joint, wire or part of a circuit that is never measured. */
export function neverMeasured(loom: Loom, id: string): boolean {
	const { wires, parts, joints } = loom;
	return (
		forbidden(loom, id) !== undefined || [wires, parts, joints].some((table) => marked(table.get(id)?.marks))
	);
}

/** Branches of the circuit that the meter's current is kept out of, each with the share of it that may pass. */
export function spared({ loom, branches }: Circuit): Map<number, number> {
	const found = new Map<number, number>();
	branches.forEach(({ owner }, k) => {
		const wire = loom.wires.get(owner.what === "crimp" || owner.what === "joint" ? owner.element : owner.id);
		const part = owner.what === "device" ? loom.parts.get(owner.id) : undefined;
		if (marked(wire?.marks) || (part?.kind === "igniter" && marked(part.marks))) found.set(k, NONE);
		else if (marked(part?.marks) && !SHARED.has(loom.contacts.get(owner.element.split(" ")[0]!)?.role ?? ""))
			found.set(k, LITTLE);
	});
	return found;
}

/** Fuses that feed marked parts and nothing else. */
export function restraintFuses(circuit: Circuit): Part[] {
	const { loom } = circuit;
	const fuses = [...loom.parts.values()].filter((part) => part.kind === "fuse");
	if (fuses.length === 0) return [];
	const next = neighbours(circuit);
	const contactAt = new Map([...loom.contacts.keys()].map((id) => [circuit.node(id)!, id]));
	return fuses.filter((fuse) =>
		contactsOfPart(loom, fuse.id).some(({ id }) => {
			const others = reached(next, circuit.node(id)!)
				.flatMap((node) => contactAt.get(node) ?? [])
				.filter((contact) => loom.contacts.get(contact)!.part !== fuse.id);
			return others.length > 0 && others.every((contact) => forbidden(loom, contact) !== undefined);
		}),
	);
}

/** What loom alone joins to each node, all plugged in. */
function neighbours(circuit: Circuit): number[][] {
	const { siemens } = circuit.standingOf(new Map(), "all plugged in");
	const next: number[][] = circuit.nodes.map(() => []);
	circuit.branches.forEach(({ a, b, owner }, k) => {
		if (owner.what === "device" || siemens[k] === 0 || a === REFERENCE || b === REFERENCE) return;
		next[a]!.push(b);
		next[b]!.push(a);
	});
	return next;
}

function reached(next: readonly (readonly number[])[], start: number): number[] {
	const seen = new Set([start]);
	for (const node of seen) for (const to of next[node]!) seen.add(to);
	return [...seen];
}

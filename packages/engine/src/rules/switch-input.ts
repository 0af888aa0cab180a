/** A switch must move the input of the control unit that it is wired to. */
import { type Circuit, type Operating, voltsAt } from "../circuit/index.js";
import { insideNode } from "../circuit/names.js";
import { type Contact, contactsOfPart, type Part } from "../loom/index.js";
import { deviceKind, pinOf } from "./support/feeds.js";
import { finding } from "./support/finding.js";
import { groundNets, isLoom, isThere, netAt } from "./support/nets.js";
import { changed, type Settled, wholeConditions } from "./support/points.js";
import { positionOf } from "./support/positions.js";
import { isPowered, pinVolts } from "./support/unit-pins.js";
import { namesAlong, reach } from "./support/ways.js";
import { amount, contactText, partText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "switch-input";

/** Volts by which the input must move between two positions. */
export const LEAST_SWING = 1;
/** How many conditions are tried with the switch moved, where the listed ones do not show it. */
const MOST_BASES = 3;
/** Contact resistance of a switch for trying it, ohms. */
const CLOSED_OHMS = 0.02;

interface Wired {
	readonly input: Contact;
	readonly switches: readonly Part[];
}

/** Looked at in listed conditions, the car whole, in which the unit is powered; then with the switch moved in them. */
export const switchInput: Rule = {
	id,
	title: "Every switch moves the input it is wired to",
	source: `${LEAST_SWING} V between two positions: common practice, no source`,
	check(circuit) {
		return wiredInputs(circuit).flatMap((wired) => checkInput(circuit, wired) ?? []);
	},
};

/** Inputs of units on whose net a contact of a switch lies. */
function wiredInputs(circuit: Circuit): Wired[] {
	const { parts, contacts } = circuit.loom;
	const switches = new Map<number, Part[]>();
	for (const contact of contacts.values()) {
		const part = parts.get(contact.part);
		if (part?.kind !== "switch") continue;
		const net = netAt(circuit, contact.id);
		switches.set(net, [...(switches.get(net) ?? []), part]);
	}
	const fixed = fixedNets(circuit);
	return [...contacts.values()].flatMap((input) => {
		if (parts.get(input.part)?.kind !== "control unit" || !input.role.startsWith("input ")) return [];
		const net = netAt(circuit, input.id);
		const found = fixed.has(net) ? undefined : switches.get(net);
		return found ? [{ input, switches: [...new Set(found)] }] : [];
	});
}

/** Ground, and the nets of units' own returns: an input tied there is coded so, and no switch should move it. */
function fixedNets(circuit: Circuit): ReadonlySet<number> {
	const returns = [...circuit.loom.contacts.values()].filter((pin) => pin.role === "sensor return");
	return new Set([...groundNets(circuit), ...returns.map((pin) => netAt(circuit, pin.id))]);
}

function checkInput(circuit: Circuit, { input, switches }: Wired): Finding | undefined {
	const bases = wholeConditions(circuit).filter(({ point }) => isPowered(point, input.part));
	if (bases.length === 0) return undefined;
	const ground = circuit.node(insideNode(input.part, "ground"))!;
	const volts = (point: Operating) => pinVolts(point, input.id) - voltsAt(point.volts, ground);
	for (const part of switches) {
		if (swing(bases.map((base) => [positionOf(base.settings, part), volts(base.point)])) >= LEAST_SWING)
			return undefined;
		for (const base of bases.slice(0, MOST_BASES)) {
			const tried = part.positions.flatMap(({ name }): [string, number][] => {
				const point = moved(circuit, base, part, name);
				return point === undefined ? [] : [[name, volts(point)]];
			});
			if (swing(tried) >= LEAST_SWING) return undefined;
		}
	}
	return report(circuit, input, switches[0]!, volts(bases[0]!.point));
}

/** Largest difference between two positions, in volts. */
function swing(seen: readonly (readonly [position: string, volts: number])[]): number {
	let most = 0;
	for (const [p, v] of seen) for (const [q, w] of seen) if (p !== q) most = Math.max(most, Math.abs(v - w));
	return most;
}

/** The base condition with one switch in another position. */
function moved(circuit: Circuit, base: Settled, part: Part, position: string): Operating | undefined {
	const joins = part.positions.find((p) => p.name === position)!.joins.map(([a, b]) => `${a}-${b}`);
	const branches = (circuit.branchesOf.get(part.id) ?? [])
		.filter((branch) => deviceKind(circuit, branch) === "switch")
		.map((branch) => ({
			branch,
			siemens: joins.includes(circuit.branches[branch]!.owner.element) ? 1 / CLOSED_OHMS : 0,
		}));
	return changed(base.point, branches);
}

function report(circuit: Circuit, input: Contact, part: Part, volts: number): Finding {
	const { loom } = circuit;
	const loomOnly = (branch: number) => isLoom(circuit, branch) && isThere(circuit, branch);
	const ways = reach(circuit, [pinOf(circuit, input)], loomOnly);
	const own = contactsOfPart(loom, part.id).filter((contact) => ways.has(pinOf(circuit, contact)));
	const partners = contactsOfPart(loom, part.id).filter((contact) =>
		part.positions.some(({ joins }) =>
			joins.some(
				(pair) => pair.includes(contact.role) && own.some((c) => c !== contact && pair.includes(c.role)),
			),
		),
	);
	const far = partners[0] && reach(circuit, [pinOf(circuit, partners[0])], loomOnly);
	return finding(circuit, id, "warn", {
		where: `${contactText(loom, input.id)}, from ${partText(loom, part.id)}`,
		why: `The input stays at ${amount(volts, "V")} in every position of ${part.id}. ${input.part} never sees it switched.`,
		mend: `Find what the other side of ${part.id} should lead to (${partners.map((c) => contactText(loom, c.id)).join(" or ") || "no contact"}) and close the gap.`,
		path: [
			input.id,
			...namesAlong(circuit, own[0] ? ways.wayTo(pinOf(circuit, own[0])) : []),
			part.id,
			...(far ? namesAlong(circuit, far.wayTo(far.nodes.at(-1)!)) : []),
		],
	});
}

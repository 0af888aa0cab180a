/** Restraint circuits are left alone. */
import type { Circuit } from "../circuit/index.js";
import { type Contact, endName, type Loom, otherHalf, type Part, type Wire } from "../loom/index.js";
import { pinOf } from "./support/feeds.js";
import { finding } from "./support/finding.js";
import { groundNets, isLoom, isThere, netAt } from "./support/nets.js";
import { namesAlong, reach } from "./support/ways.js";
import { contactText, list, partText, wireText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "restraints-touched";

/**
 * What is marked `pyrotechnic` stands as it was delivered, its wires end where they did, and nothing else hangs on the
 * conductors of an igniter.
 */
export const restraintsTouched: Rule = {
	id,
	title: "Restraint circuits are left as delivered",
	source: "mark `pyrotechnic` of the tables; the procedures of the car's maker",
	check(circuit, before) {
		return [...(before ? changedRows(circuit, before) : []), ...strangers(circuit)];
	},
};

const isMarked = (thing: Part | Wire | undefined) => thing?.marks.includes("pyrotechnic") === true;

function changedRows(circuit: Circuit, before: Circuit): Finding[] {
	const [now, was] = [circuit.loom, before.loom];
	const found: Finding[] = [];
	for (const part of was.parts.values())
		if (isMarked(part) && !now.parts.has(part.id))
			found.push(touched(circuit, partText(was, part.id), "It was taken out.", nearest(was, now, part.id)));
	for (const wire of was.wires.values()) {
		const there = now.wires.get(wire.id);
		if (!isMarked(wire) || (there && standing(there) === standing(wire))) continue;
		found.push(
			touched(
				circuit,
				wireText(was, wire.id),
				there ? "It was worked on." : "It was taken out.",
				[wire.id, ...ends(wire)].filter((name) => exists(now, name)),
			),
		);
	}
	for (const wire of now.wires.values()) {
		if (was.wires.has(wire.id) || isMarked(wire)) continue;
		const at = ends(wire).find((name) => isRestraint(now, now.contacts.get(name)));
		if (at)
			found.push(
				touched(circuit, wireText(now, wire.id), `A new wire ends at ${contactText(now, at)}.`, [
					wire.id,
					at,
				]),
			);
	}
	return found;
}

const standing = (wire: Wire) => [wire.mm2, wire.metres, wire.from.at, wire.to.at, ...ends(wire)].join("|");
const ends = (wire: Wire) => [endName(wire.from), endName(wire.to)];
const exists = (loom: Loom, name: string) =>
	[loom.parts, loom.contacts, loom.wires, loom.joints].some((table) => table.has(name));

/** The removed part's wires that are left, for the drawing. */
function nearest(was: Loom, now: Loom, part: string): string[] {
	return [...was.wires.values()]
		.filter((wire) => ends(wire).some((name) => was.contacts.get(name)?.part === part))
		.map((wire) => wire.id)
		.filter((wire) => now.wires.has(wire));
}

function isRestraint(loom: Loom, contact: Contact | undefined): boolean {
	return (
		contact !== undefined && [contact.part, contact.connector].some((part) => isMarked(loom.parts.get(part)))
	);
}

/** Pins on an igniter's conductors that are no restraint part's, and ground points. */
function strangers(circuit: Circuit): Finding[] {
	const { loom } = circuit;
	const byNet = new Map<number, Contact[]>();
	for (const contact of loom.contacts.values()) {
		const part = loom.parts.get(contact.part);
		if (part?.kind === "connector" && otherHalf(loom, contact) !== undefined) continue;
		const net = netAt(circuit, contact.id);
		byNet.set(net, [...(byNet.get(net) ?? []), contact]);
	}
	return [...byNet].flatMap(([net, pins]) => {
		const igniter = pins.find((pin) => loom.parts.get(pin.part)?.kind === "igniter");
		if (igniter === undefined) return [];
		const others = pins.filter((pin) => !isRestraint(loom, pin));
		const grounded = groundNets(circuit).has(net);
		if (others.length === 0 && !grounded) return [];
		const ways = reach(circuit, [pinOf(circuit, igniter)], (k) => isLoom(circuit, k) && isThere(circuit, k));
		const end = others[0] && pinOf(circuit, others[0]);
		const what = [
			...others.map((pin) => contactText(loom, pin.id)),
			...(grounded ? ["a ground of the car"] : []),
		];
		return touched(circuit, contactText(loom, igniter.id), `${list(what)} hangs on its conductor.`, [
			igniter.part,
			igniter.id,
			...namesAlong(circuit, end === undefined ? [] : ways.wayTo(end)),
		]);
	});
}

function touched(circuit: Circuit, where: string, what: string, path: readonly string[]): Finding {
	const marked = [...circuit.loom.parts.values()].find((part) => isMarked(part))?.id ?? "";
	return finding(circuit, id, "stop", {
		where,
		why: `${what} Restraint circuits can fire when they are fed, and fail to fire when they are altered.`,
		mend: "Undo it in the recipe. Work on restraints only by the procedure of the car's maker.",
		path: [...path, marked],
	});
}

/**
 * A ground put where it should not be: a ring under another bolt, a return taken to a ground point and not to its pin,
 * so that it shares the volts that other circuits drop there.
 */
import type { Change, Circuit } from "../../circuit/index.js";
import {
	endName,
	type Loom,
	type Wire,
	type WireEnd,
	wiresAtJoint,
	wiresInBundle,
} from "../../loom/index.js";
import { CHANCE } from "../rates.js";
import type { Fault, FaultContext, FaultKind } from "../types.js";
import { partWords, placeOf, wirePath, wireWords } from "../words.js";

/** Siemens of a ring under a bolt. */
const RING = 3000;
/** Pins of a unit that are returns of their own. */
const RETURNS: ReadonlySet<string> = new Set(["ground", "sensor return"]);

function isGround(loom: Loom, end: WireEnd): boolean {
	return end.at === "joint" && loom.joints.get(end.joint)?.kind === "ground";
}

function isReturn(loom: Loom, end: WireEnd): boolean {
	const contact = end.at === "contact" ? loom.contacts.get(end.contact) : undefined;
	return (
		contact !== undefined &&
		RETURNS.has(contact.role) &&
		loom.parts.get(contact.part)?.kind === "control unit"
	);
}

/** Ground points that the other wires of its branch of the loom go to; where there is none, all. */
function othersNear(loom: Loom, wire: Wire, own: string): string[] {
	const near = new Set(
		wiresInBundle(loom, wire.bundle)
			.flatMap(({ from, to }) => [from, to])
			.filter((end) => isGround(loom, end))
			.map(endName),
	);
	near.delete(own);
	if (near.size > 0) return [...near];
	return [...loom.joints.values()].filter((j) => j.kind === "ground" && j.id !== own).map((j) => j.id);
}

/** One end of a wire taken off where it belongs and put to a ground point. */
function moved(circuit: Circuit, wire: Wire, end: WireEnd, ground: string): Change | undefined {
	const node = circuit.node(ground);
	const branch = (circuit.branchesOf.get(endName(end)) ?? []).find(
		(k) => circuit.branches[k]!.owner.element === wire.id,
	);
	if (node === undefined || branch === undefined) return undefined;
	const { a } = circuit.branches[branch]!;
	return { branches: [{ branch, siemens: 0 }], added: [{ a, b: node, siemens: RING }] };
}

function list({ circuit, loom, touched }: FaultContext): Fault[] {
	const faults: Fault[] = [];
	for (const wire of loom.wires.values()) {
		if (wire.from.at === "loose" || wire.to.at === "loose") continue;
		for (const side of ["from", "to"] as const) {
			const end = wire[side];
			const own = endName(end);
			// Only hands put a ring under the wrong bolt: nothing untouched is listed.
			if (!touched.ends.has(`${wire.id}@${side}`) && !touched.wires.has(wire.id)) continue;
			if (!isReturn(loom, end) && !(isGround(loom, end) && wiresAtJoint(loom, own).length > 0)) continue;
			const changes = othersNear(loom, wire, own).flatMap((g) => moved(circuit, wire, end, g) ?? []);
			if (changes.length === 0) continue;
			faults.push({
				id: `ground shared wrongly:${wire.id}@${side}`,
				kind: "ground shared wrongly",
				where: `${wireWords(loom, wire.id)}: at another ground point in place of ${partWords(loom, own)}`,
				place: placeOf(loom, own),
				prior: CHANCE.groundShared,
				patterns: changes.map((change) => ({ weight: 1 / changes.length, change })),
				shakenBy: "",
				inParts: [],
				path: wirePath(loom, wire.id),
				mend: `follow ${wire.id} to its end and put it to ${own}`,
			});
		}
	}
	return faults;
}

export const groundShared: FaultKind = {
	kind: "ground shared wrongly",
	title: "Ground shared wrongly",
	source: "common practice, no source",
	list,
};

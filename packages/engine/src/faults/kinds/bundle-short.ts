/**
 * Two wires that lie side by side along the loom, chafed or pinched together.
 *
 * A car has thousands of such pairs. Listed are those that hands pressed together, both worked on in one branch of
 * the loom and in use at both ends, and wires twisted with each other.
 */
import { type Wire, wiresInBundle } from "../../loom/index.js";
import { joined } from "../patterns.js";
import { CHANCE, COMES_AND_GOES, wireHands } from "../rates.js";
import { sideOf } from "../side.js";
import type { Fault, FaultContext, FaultKind } from "../types.js";
import { wirePath, wireWords } from "../words.js";

/** Ohms of two conductors that touch. */
const TOUCH_OHMS = 0.1;

function pairs({ loom, touched }: FaultContext): (readonly [Wire, Wire])[] {
	const found: (readonly [Wire, Wire])[] = [];
	const live = ({ from, to }: Wire) => from.at !== "loose" && to.at !== "loose";
	for (const wire of loom.wires.values())
		for (const other of wire.bundle === "" ? [] : wiresInBundle(loom, wire.bundle)) {
			if (wire.id >= other.id || !live(wire) || !live(other)) continue;
			const twisted = wire.pair !== "" && wire.pair === other.pair;
			if (twisted || (touched.wires.has(wire.id) && touched.wires.has(other.id))) found.push([wire, other]);
		}
	return found;
}

/** Where a wire is touched: at a contact it leads to, else at its joint. */
function nodeOf(context: FaultContext, { from, to }: Wire): number | undefined {
	for (const end of [from, to]) if (end.at === "contact") return sideOf(context, end.contact);
	for (const end of [from, to]) if (end.at === "joint") return context.circuit.node(end.joint);
	return undefined;
}

function list(context: FaultContext): Fault[] {
	const { loom } = context;
	return pairs(context).flatMap(([one, two]): Fault[] => {
		const a = nodeOf(context, one);
		const b = nodeOf(context, two);
		// Two ends of one point touch anyway.
		if (a === undefined || b === undefined || a === b) return [];
		return [
			{
				id: `short in the bundle:${one.id}:${two.id}`,
				kind: "short in the bundle",
				where: `${wireWords(loom, one.id)} touches ${wireWords(loom, two.id)}`,
				place: one.bundle,
				prior: CHANCE.bundle * Math.min(wireHands(context, one.id), wireHands(context, two.id)),
				patterns: [{ weight: 1, change: joined(a, b, TOUCH_OHMS) }],
				shakenBy: "",
				comesAndGoes: COMES_AND_GOES.touch,
				inParts: [],
				path: [...wirePath(loom, one.id), ...wirePath(loom, two.id)],
				mend: `open the sleeve where ${one.id} and ${two.id} lie together, look for a pinched or chafed place, and mend both`,
			},
		];
	});
}

export const bundleShort: FaultKind = {
	kind: "short in the bundle",
	title: "Two wires of one bundle touch",
	source: "field shares of wire faults, reference/diagnosis/failure-rates.json (from memory)",
	list,
};

/** Insulation worn through: a wire touching the body, or a supply. */
import { REFERENCE } from "../../circuit/index.js";
import type { Wire } from "../../loom/index.js";
import { joined } from "../patterns.js";
import { CHANCE, COMES_AND_GOES, wireHands } from "../rates.js";
import { sideOf } from "../side.js";
import type { Fault, FaultContext, FaultKind } from "../types.js";
import { wirePath, wireWords } from "../words.js";

/** Ohms of a chafe that touches well. */
const TOUCH_OHMS = 0.05;

/**
 * The chafe lies somewhere along the wire; it is worked at its end, a few milliohms off: at the contact it leads to,
 * else at the joint.
 */
function whereItTouches(context: FaultContext, wire: Wire): number | undefined {
	const ends = [wire.from, wire.to];
	const contact = ends.find((end) => end.at === "contact");
	if (contact?.at === "contact") return sideOf(context, contact.contact);
	const joint = ends.find((end) => end.at === "joint");
	return joint?.at === "joint" ? context.circuit.node(joint.joint) : undefined;
}

function endsAt({ circuit }: FaultContext, wire: Wire, node: number): boolean {
	const first = [wire.from, wire.to].find((end) => end.at === "contact");
	return first?.at === "contact" && circuit.node(first.contact) === node;
}

function list(
	context: FaultContext,
	kind: string,
	share: number,
	to: number | undefined,
	what: string,
): Fault[] {
	if (to === undefined) return [];
	const faults: Fault[] = [];
	for (const wire of context.loom.wires.values()) {
		const node = whereItTouches(context, wire);
		// A wire that ends at the supply's own clamp touches it anyway.
		if (node === undefined || endsAt(context, wire, to)) continue;
		faults.push({
			id: `${kind}:wire:${wire.id}`,
			kind,
			where: `${wireWords(context.loom, wire.id)} touches ${what}`,
			place: wire.bundle,
			prior: CHANCE.chafed * wireHands(context, wire.id) * share,
			patterns: [{ weight: 1, change: joined(node, to, TOUCH_OHMS) }],
			shakenBy: "",
			comesAndGoes: COMES_AND_GOES.touch,
			inParts: [],
			path: wirePath(context.loom, wire.id),
			mend: `look along ${wire.id} for chafing, mend the insulation and tie it clear of the edge`,
		});
	}
	return faults;
}

const SOURCE = "field shares of wire faults, reference/diagnosis/failure-rates.json (from memory)";

export const shortToGround: FaultKind = {
	kind: "short to ground",
	title: "Wire touching the body",
	source: SOURCE,
	list: (context) => list(context, "short to ground", 0.8, REFERENCE, "the body"),
};

export const shortToSupply: FaultKind = {
	kind: "short to supply",
	title: "Wire touching a supply",
	source: SOURCE,
	list(context) {
		const battery = [...context.loom.parts.values()].find((part) => part.kind === "battery");
		const plus = [...context.loom.contacts.values()].find((c) => c.part === battery?.id && c.role === "+");
		const node = plus && context.circuit.node(plus.id);
		return list(context, "short to supply", 0.2, node, "a battery feed");
	},
};

/**
 * Chances of faults before evidence, per item, on a car that was just converted.
 *
 * Between kinds of joint the ratios are those of MIL-HDBK-217F Notice 2 section 17.1 and its parts count
 * (reference/diagnosis/failure-rates.json: crimp 0.00026, spring contact 0.17, relay 2.1, fuse 0.08 per 1e6 h);
 * the absolute level and the weight of what hands were on are workmanship: common practice, no source. They only
 * rank; the shop's own counts replace them.
 */
import type { FaultContext } from "./types.js";

/** Chance that one sound, untouched machine crimp is bad today. All others are in proportion. */
const CRIMP = 1e-6;

export const CHANCE = {
	/** Broken conductor: seldom beside its terminals. */
	wire: 1e-6,
	/** Insulation worn through: the largest share of field wire faults (failure-rates.json, field shares). */
	chafed: 1e-6,
	crimp: CRIMP,
	/** A mated contact wears and corrodes: 60 crimps (failure-rates.json, relative prior). */
	mated: 30 * CRIMP,
	/** Splice, ring or bar end. */
	joint: 2 * CRIMP,
	groundBolt: 20 * CRIMP,
	fuse: 50 * CRIMP,
	relay: 200 * CRIMP,
	device: 100 * CRIMP,
	unit: 20 * CRIMP,
	unitPin: 2 * CRIMP,
	notLocked: 50 * CRIMP,
	notSeated: 100 * CRIMP,
	neighbours: 2 * CRIMP,
	swapped: 0.05 * CRIMP,
	stepLeftOut: 3e-3,
	/** A step done on the wire beside: seldomer than one forgotten. */
	stepMisplaced: 3e-4,
	/** Of a terminal that hands put in. */
	wrongCavity: 3e-4,
	/** Of a wire end that hands put under a bolt. */
	groundShared: 3e-4,
	/** Of a part that nobody touched since the maker fitted it. */
	wrongRelay: CRIMP,
	wrongValue: CRIMP,
	/** Two wires that touch each other and not the body. */
	bundle: 0.2 * CRIMP,
} as const;

/**
 * Share of faults that come and go with heat, damp and shaking: joints that barely touch, wires that barely chafe,
 * parts that fail hot. Common practice, no source.
 */
export const COMES_AND_GOES = { joint: 0.3, touch: 0.3, device: 0.15 } as const;

/** How much more suspect an item is when the recipe worked on it, or on the connector that holds it. */
export const HANDS = {
	/** A joint that was made by hand on this car. */
	made: 1000,
	/** A terminal that was put into its cavity by hand. */
	inserted: 30,
	/** A connector that was opened, a contact in it that was not itself worked on. */
	opened: 20,
	/** A wire that was cut, moved or laid. */
	laid: 200,
	/** A part that hands fitted. */
	fitted: 300,
	/** Two contacts that were both worked on in one connector. */
	swapped: 20000,
} as const;

/** For the crimp in a contact (`made`) or for its seat in the housing (`inserted`). */
export function contactHands(
	{ touched, loom }: FaultContext,
	contact: string,
	work: "made" | "inserted",
): number {
	if (touched.contacts.has(contact)) return HANDS[work];
	const found = loom.contacts.get(contact);
	const housing = found?.connector || found?.part || "";
	if (!touched.connectors.has(housing)) return 1;
	return work === "made" ? HANDS.opened : HANDS.opened / 10;
}

export function wireHands({ touched }: FaultContext, wire: string): number {
	return touched.wires.has(wire) ? HANDS.laid : 1;
}

/** For the choice of a part: one that the recipe fitted may be another than it means. */
export function partHands({ touched }: FaultContext, part: string): number {
	return touched.parts.has(part) ? HANDS.fitted : 1;
}

export function jointHands({ touched }: FaultContext, joint: string, wire: string): number {
	if (touched.ends.has(`${wire}@from`) || touched.ends.has(`${wire}@to`)) return HANDS.made;
	return touched.joints.has(joint) ? HANDS.opened : 1;
}

export function connectorHands({ touched }: FaultContext, connector: string): number {
	return touched.connectors.has(connector) ? HANDS.opened : 1;
}

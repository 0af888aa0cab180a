/**
 * Resistances of the joints that no table lists: crimps, mated contacts, splices, rings.
 *
 * A sound connection is a few milliohms at most (reference/electrical/practice-limits.csv, row 028: below
 * 5 milliohm). The split between crimp, mated contact and ring, and the scatter: common practice, no source.
 */
export interface JointResistance {
	readonly ohms: number;
	/** Relative standard deviation. */
	readonly spread: number;
}

export const CRIMP: JointResistance = { ohms: 0.0005, spread: 0.4 };
/** Larger conductors are crimped over more area. */
export const HEAVY_CRIMP: JointResistance = { ohms: 0.00005, spread: 0.4 };
export const MATED: JointResistance = { ohms: 0.003, spread: 0.4 };
/** Blades of fuses and relays, and other single plugged terminals. */
export const BLADE: JointResistance = { ohms: 0.001, spread: 0.4 };
/** A bolted terminal: battery post, starter stud. */
export const BOLTED: JointResistance = { ohms: 0.0001, spread: 0.4 };
export const SPLICE: JointResistance = { ohms: 0.0004, spread: 0.4 };
export const RING: JointResistance = { ohms: 0.0003, spread: 0.5 };
export const BAR: JointResistance = { ohms: 0.0003, spread: 0.4 };
/** A ground point's bolt to the metal. */
export const BOLT_TO_METAL: JointResistance = { ohms: 0.0002, spread: 0.5 };

/** From this cross-section on a wire has a heavy, bolted terminal. */
export const HEAVY_MM2 = 6;

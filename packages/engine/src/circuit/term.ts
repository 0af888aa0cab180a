import type { Shift } from "./shift.js";

/** One conductor's change: siemens and source amperes added. */
export interface Term {
	readonly a: number;
	readonly b: number;
	readonly dg: number;
	readonly dh: number;
	/** Branch number, or -1 for an added conductor. */
	readonly branch: number;
	/** Siemens before and after. */
	readonly before: number;
	readonly after: number;
	/** Source volts after. */
	readonly emf: number;
	/** Where the change stands in for one of another branch of its chain. */
	readonly shift: Shift | undefined;
}

/** What a change does at a stage, as the stage found it. */
import type { Change } from "./changes.js";
import type { Cut } from "./cut.js";
import type { Term } from "./term.js";

/** Typed arrays are slow to make: single numbers come in plain ones. */
export type Numbers = Float64Array | readonly number[];

export const NO_NUMBERS: readonly number[] = [];

export class Solution {
	/** Where a correction would cancel: all potentials, of a factor changed in part, in its elimination order. */
	potentials: Float64Array | undefined = undefined;
	/** (I + D S)^-1 D, where an ohmmeter asked for it. */
	gain: Numbers | undefined = undefined;

	/**
	 * @param given all that changed, as given
	 * @param carrying those of them that carry current
	 * @param terms the same moved along their chains, and tethers taken away
	 */
	constructor(
		readonly change: Change,
		readonly given: readonly Term[],
		readonly carrying: readonly Term[],
		readonly terms: readonly Term[],
		readonly cut: Cut,
		readonly c: Numbers,
		readonly s: Numbers,
	) {}
}

/** I + D S, k x k by rows. */
export function capacitance(terms: readonly Term[], s: Numbers): Float64Array {
	const k = terms.length;
	const m = new Float64Array(k * k);
	for (let i = 0; i < k; i++)
		for (let j = 0; j < k; j++) m[i * k + j] = terms[i]!.dg * s[i * k + j]! + (i === j ? 1 : 0);
	return m;
}

/**
 * Outcomes that a meter can tell apart, and what a reading would say of the fault.
 *
 * Predicted values closer than four deviations fall together; 'open' is an outcome of its own. Then
 * I(outcome; fault) = H(outcome) - sum_f P(f) H(outcome | f), in bits, a misread being any outcome alike.
 * D. V. Lindley, 'On a measure of the information provided by an experiment', Ann. Math. Stat. 27, 1956.
 *
 * One row of small numbers per reading, so that thousands of faults by hundreds of readings are one pass of sums.
 */
import type { What } from "../readings/index.js";
import { MISREAD, scaled, scaledDeviation } from "./likelihood.js";

/** Deviations between two neighbouring values from which they are told apart. */
const APART = 4;
/** Volts below which a voltmeter on a floating wire cannot be told from one on a dead wire. */
const NOUGHT_VOLTS = 0.3;
/** Most outcomes of one reading; what lies beyond falls into the last. */
const MOST_OUTCOMES = 255;

/** Ways in which hypotheses show themselves: those of hypothesis h are the entries first[h] up to first[h + 1]. */
export interface Entries {
	readonly first: Int32Array;
	/** Joint chance of hypothesis and way; sums to 1. */
	readonly weights: Float64Array;
}

/**
 * Outcome number of each value (NaN: open), by rising value.
 * @param deviation of the reading on a sound car, in its unit
 * @param values one per entry
 * @param into where the outcome numbers go, one per entry
 * @returns how many outcomes there are
 */
export function outcomesOf(
	what: What,
	deviation: number,
	values: Float64Array,
	into: Uint8Array = new Uint8Array(values.length),
): { count: number; outcomes: Uint8Array } {
	const numbers = values.filter((value) => !Number.isNaN(value)).sort();
	const volts = what === "volts" || what === "drop";
	/** Least value of each outcome. */
	const starts: number[] = [];
	let last = Number.NEGATIVE_INFINITY;
	let nought = -1;
	for (const value of numbers) {
		const at = scaled(what, value);
		const apart = starts.length === 0 || at - last >= APART * scaledDeviation(what, value, deviation);
		if (apart && starts.length < MOST_OUTCOMES - 1) starts.push(value);
		if (volts && nought < 0 && Math.abs(value) < NOUGHT_VOLTS) nought = starts.length - 1;
		last = at;
	}
	const open = nought >= 0 ? nought : starts.length;
	for (let e = 0; e < values.length; e++)
		into[e] = Number.isNaN(values[e]) ? open : lastFrom(starts, values[e]!);
	const count = numbers.length === values.length ? starts.length : Math.max(starts.length, open + 1);
	return { count, outcomes: into };
}

/** Number of the last start that is not above a value. */
function lastFrom(starts: readonly number[], value: number): number {
	let low = 0;
	let high = starts.length;
	while (high - low > 1) {
		const middle = (low + high) >> 1;
		if (starts[middle]! <= value) low = middle;
		else high = middle;
	}
	return low;
}

/** p log2 p, 0 at 0. */
function plogp(p: number): number {
	return p > 0 ? p * Math.log2(p) : 0;
}

const sums = new Float64Array(MOST_OUTCOMES + 1);
const own = new Float64Array(MOST_OUTCOMES + 1);

/** Bits that a reading with these outcomes tells of the hypotheses. O(entries). */
export function bitsOf(
	{ first, weights }: Entries,
	{ count, outcomes }: { readonly count: number; readonly outcomes: Uint8Array },
): number {
	if (count < 2) return 0;
	const blur = MISREAD / count;
	const seen = (p: number) => (1 - MISREAD) * p + blur;
	/** H(outcome | f) where f shows one value only: the same for all such. */
	const certain = -plogp(seen(1)) - (count - 1) * plogp(blur);
	sums.fill(0, 0, count);
	let single = 0;
	let rest = 0;
	if (first.length === weights.length + 1) {
		// Two sets of sums by turns: additions to one outcome need not wait for each other.
		own.fill(0, 0, count);
		const even = weights.length & ~1;
		for (let e = 0; e < even; e += 2) {
			sums[outcomes[e]!]! += weights[e]!;
			own[outcomes[e + 1]!]! += weights[e + 1]!;
		}
		if (even < weights.length) sums[outcomes[even]!]! += weights[even]!;
		for (let o = 0; o < count; o++) {
			sums[o]! += own[o]!;
			single += sums[o]!;
		}
	} else
		for (let h = 0; h + 1 < first.length; h++) {
			const begin = first[h]!;
			const end = first[h + 1]!;
			if (end === begin + 1) {
				const weight = weights[begin]!;
				sums[outcomes[begin]!]! += weight;
				single += weight;
				continue;
			}
			own.fill(0, 0, count);
			let weight = 0;
			for (let e = begin; e < end; e++) {
				own[outcomes[e]!]! += weights[e]!;
				weight += weights[e]!;
			}
			if (weight === 0) continue;
			for (let o = 0; o < count; o++) {
				sums[o]! += own[o]!;
				rest -= weight * plogp(seen(own[o]! / weight));
			}
		}
	let bits = -single * certain - rest;
	for (let o = 0; o < count; o++) bits -= plogp(seen(sums[o]!));
	return Math.max(0, bits);
}

/** The outcome each hypothesis would most likely show. */
export function likeliest({ first, weights }: Entries, count: number, outcomes: Uint8Array): Uint8Array {
	const result = new Uint8Array(first.length - 1);
	for (let h = 0; h < result.length; h++) {
		own.fill(0, 0, count);
		let best = outcomes[first[h]!]!;
		for (let e = first[h]!; e < first[h + 1]!; e++) {
			const outcome = outcomes[e]!;
			own[outcome]! += weights[e]!;
			if (own[outcome]! > own[best]!) best = outcome;
		}
		result[h] = best;
	}
	return result;
}

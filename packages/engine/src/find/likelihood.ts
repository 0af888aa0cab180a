/**
 * How likely what was seen is, given a predicted number.
 *
 * Nothing inside tolerance is ruled out, and every entry may be wrong: a misread value, a code that comes from
 * somewhere else. The chances of misreading are common practice, no source.
 */
import type { What } from "../readings/index.js";
import { meterDeviation } from "./quantities.js";

/** Chance that a value written down has nothing to do with the circuit asked for. */
export const MISREAD = 0.02;
/** Chance that a code is there without its fault, or missing in spite of it. */
export const STRAY_CODE = 0.0003;
export const MISSED_CODE = 0.04;
/** Chance that a function was judged wrongly. */
export const MISJUDGED = 0.03;
/** Chance that a bench test calls a bad part good, and a good part bad. */
export const BENCH_MISSES = 0.1;
export const BENCH_FALSE = 0.03;

/** Standard normal distribution function. W. J. Cody's rational form is more than needed: A&S 7.1.26, error 1.5e-7. */
export function normalCdf(z: number): number {
	const x = Math.abs(z) / Math.SQRT2;
	const t = 1 / (1 + 0.3275911 * x);
	const poly =
		t * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))));
	const erf = 1 - poly * Math.exp(-x * x);
	return z >= 0 ? (1 + erf) / 2 : (1 - erf) / 2;
}

/** Chance that a number of this expected value and deviation lies below `low` or above `high`. */
export function chanceOutside(
	value: number,
	deviation: number,
	low: number | undefined,
	high: number | undefined,
): number {
	const sd = Math.max(deviation, 1e-3);
	const below = low === undefined ? 0 : normalCdf((low - value) / sd);
	const above = high === undefined ? 0 : normalCdf((value - high) / sd);
	return Math.min(1, below + above);
}

/** Volts below this on a point with no way to anywhere: a meter's own load pulls a floating wire to nought. */
const FLOATING_VOLTS = 0.2;

/** Numbers are compared on this scale: linear for volts, by ratio for large ohms and amps. */
export function scaled(what: What, value: number): number {
	return what === "volts" || what === "drop" ? value : Math.asinh(value);
}

/** Width of the scale over which a misread value may lie. */
export const SCALE_WIDTH = 20;

/** Deviation on that scale of a reading of `value` expected with `deviation`. */
export function scaledDeviation(what: What, value: number, deviation: number): number {
	const sd = Math.hypot(deviation, meterDeviation(what, value));
	return what === "volts" || what === "drop" ? sd : sd / Math.hypot(value, 1);
}

function normalDensity(x: number, sd: number): number {
	return Math.exp(-0.5 * (x / sd) ** 2) / (sd * Math.sqrt(2 * Math.PI));
}

/** Sharpest deviation of any meter on the scale of comparison: densities are given against its peak. */
const SHARPEST = 0.002;

/** Log likelihood of a value read, at most 0, given the number predicted (NaN: open). */
export function logReading(what: What, read: number | "open", predicted: number, deviation: number): number {
	const log = logDensity(what, read, predicted, deviation);
	return typeof read === "number" ? log - Math.log(normalDensity(0, SHARPEST)) : log;
}

/** Likelihood of a reading, on the same footing, if it was misread. */
export function strayReading(read: number | "open"): number {
	return read === "open" ? MISREAD : MISREAD / SCALE_WIDTH / normalDensity(0, SHARPEST);
}

function logDensity(what: What, read: number | "open", predicted: number, deviation: number): number {
	const stray = MISREAD / SCALE_WIDTH;
	const volts = what === "volts" || what === "drop";
	if (Number.isNaN(predicted)) {
		if (read === "open") return Math.log(volts ? 0.5 : 1 - MISREAD);
		return volts ? Math.log(0.5 * normalDensity(read, FLOATING_VOLTS) + stray) : Math.log(stray);
	}
	if (read === "open") return Math.log(what === "ohms" && predicted > 1e6 ? 0.5 : MISREAD);
	const sd = Math.max(scaledDeviation(what, predicted, deviation), SHARPEST);
	const x = scaled(what, read) - scaled(what, predicted);
	return Math.log((1 - MISREAD) * normalDensity(x, sd) + stray);
}

/** Log likelihood of a code being there or not, given the chance that its monitor trips. */
export function logCode(present: boolean, trips: number): number {
	const there = trips * (1 - MISSED_CODE) + (1 - trips) * STRAY_CODE;
	return Math.log(present ? there : 1 - there);
}

export function logFunction(holds: boolean, chance: number): number {
	const yes = chance * (1 - MISJUDGED) + (1 - chance) * MISJUDGED;
	return Math.log(holds ? yes : 1 - yes);
}

export function logBench(good: boolean, faultInside: boolean): number {
	const saysGood = faultInside ? BENCH_MISSES : 1 - BENCH_FALSE;
	return Math.log(good ? saysGood : 1 - saysGood);
}

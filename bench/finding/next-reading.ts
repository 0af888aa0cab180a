/**
 * The next reading out of a matrix of predictions: 20,000 faults by 500 readings, as the engine rates them and by the
 * definition (for each outcome of each reading the posterior of all faults and its entropy).
 */

import { MISREAD } from "../../packages/engine/src/find/likelihood.js";
import { bitsOf, type Entries, outcomesOf } from "../../packages/engine/src/find/outcomes.js";
import { randomOf } from "./random.js";

const FAULTS = 20_000;
const READINGS = 500;
const RUNS = 40;
/** The definition is slow: it is timed on so many readings and scaled. */
const BY_DEFINITION = 25;
const DEVIATION = 0.05;

interface Rows {
	readonly entries: Entries;
	readonly rows: readonly { readonly count: number; readonly outcomes: Uint8Array }[];
}

export interface Scale {
	/** Seconds of each of the runs, rising. */
	readonly seconds: readonly number[];
	readonly byDefinition: number;
	/** Largest difference between the two, in bits. */
	readonly off: number;
	/** Seconds to sort the predictions of all readings into outcomes, once per car. */
	readonly sorting: number;
}

export function nextReading(): Scale {
	const random = randomOf(3);
	const began = performance.now();
	const rows = Array.from({ length: READINGS }, () => {
		const levels = Array.from({ length: 2 + Math.floor(6 * random.uniform()) }, () => 13 * random.uniform());
		const values = Float64Array.from({ length: FAULTS }, () =>
			random.uniform() < 0.05 ? Number.NaN : levels[Math.floor(levels.length * random.uniform() ** 3)]!,
		);
		return outcomesOf("volts", DEVIATION, values);
	});
	const sorting = (performance.now() - began) / 1000;
	const first = Int32Array.from({ length: FAULTS + 1 }, (_, k) => k);
	const seconds: number[] = [];
	let off = 0;
	let byDefinition = 0;
	for (let run = 0; run < RUNS; run++) {
		// A posterior after some evidence: a few faults lead, most are far behind.
		const weights = Float64Array.from({ length: FAULTS }, () => Math.exp(4 * random.normal()));
		const sum = weights.reduce((all, w) => all + w, 0);
		for (let k = 0; k < FAULTS; k++) weights[k]! /= sum;
		const given: Rows = { entries: { first, weights }, rows };
		const start = performance.now();
		const bits = rows.map((row) => bitsOf(given.entries, row));
		seconds.push((performance.now() - start) / 1000);
		if (run > 0) continue;
		const slow = performance.now();
		const plain = rows.slice(0, BY_DEFINITION).map((row) => definition(given.entries.weights, row));
		byDefinition = ((performance.now() - slow) / 1000) * (READINGS / BY_DEFINITION);
		off = Math.max(...plain.map((value, k) => Math.abs(value - bits[k]!)));
	}
	return { seconds: seconds.sort((x, y) => x - y), byDefinition, off, sorting };
}

/** H(fault) - sum over outcomes of P(outcome) H(fault | outcome). */
function definition(
	weights: Float64Array,
	{ count, outcomes }: { readonly count: number; readonly outcomes: Uint8Array },
): number {
	let bits = entropy(weights);
	for (let outcome = 0; outcome < count; outcome++) {
		const joint = weights.map((w, f) => w * ((outcomes[f] === outcome ? 1 - MISREAD : 0) + MISREAD / count));
		const chance = joint.reduce((sum, p) => sum + p, 0);
		bits -= chance * entropy(joint.map((p) => p / chance));
	}
	return bits;
}

function entropy(chances: Float64Array): number {
	return chances.reduce((sum, p) => (p > 0 ? sum - p * Math.log2(p) : sum), 0);
}

/**
 * What a reading would tell: mutual information between its outcome and the fault.
 *
 * Outcomes are what the meter can tell apart: predicted values closer than four deviations fall together, 'open'
 * is one of its own. I(outcome; fault) = H(outcome) - sum_f P(f) H(outcome | f), in bits.
 * D. V. Lindley, 'On a measure of the information provided by an experiment', Ann. Math. Stat. 27, 1956.
 */
import type { Question } from "../readings/index.js";
import { MISREAD, scaled, scaledDeviation } from "./likelihood.js";
import type { Outcome } from "./types.js";
import type { Weighed } from "./weighing.js";

/** One pattern of a hypothesis and the value it predicts (NaN: open). */
export interface Entry {
	readonly hypothesis: number;
	readonly weight: number;
	readonly value: number;
}

interface Bin {
	readonly low: number;
	readonly high: number;
	readonly weight: number;
	/** Weight by hypothesis. */
	readonly of: ReadonlyMap<number, number>;
}

function binsOf(question: Question, deviation: number, entries: readonly Entry[]): Bin[] {
	const open = entries.filter((e) => Number.isNaN(e.value));
	const numbers = entries.filter((e) => !Number.isNaN(e.value)).sort((x, y) => x.value - y.value);
	const groups: Entry[][] = [];
	for (const entry of numbers) {
		const last = groups.at(-1)?.at(-1);
		const sd = scaledDeviation(question.what, entry.value, deviation);
		const near =
			last !== undefined && scaled(question.what, entry.value) - scaled(question.what, last.value) < 4 * sd;
		if (near) groups.at(-1)!.push(entry);
		else groups.push([entry]);
	}
	// A voltmeter on a floating wire shows next to nothing: that outcome cannot be told from 0 V.
	const volts = question.what === "volts" || question.what === "drop";
	const nought = volts ? groups.find((g) => Math.abs(g[0]!.value) < 0.3) : undefined;
	if (open.length > 0) {
		if (nought) nought.push(...open);
		else groups.push(open);
	}
	return groups.map((group) => {
		const of = new Map<number, number>();
		for (const e of group) of.set(e.hypothesis, (of.get(e.hypothesis) ?? 0) + e.weight);
		const values = group.map((e) => e.value).filter((v) => !Number.isNaN(v));
		const weight = group.reduce((sum, e) => sum + e.weight, 0);
		return { low: Math.min(...values), high: Math.max(...values), weight, of };
	});
}

/** p log2 p, 0 at 0. */
function plogp(p: number): number {
	return p > 0 ? p * Math.log2(p) : 0;
}

export interface Information {
	readonly bits: number;
	readonly outcomes: readonly Outcome[];
	/** The outcome each hypothesis would most likely show, by number. */
	readonly outcomeOf: ReadonlyMap<number, number>;
}

/** @param deviation of the reading on a sound car, in its unit */
export function information(
	question: Question,
	deviation: number,
	entries: readonly Entry[],
	leading: readonly Weighed[],
): Information {
	const bins = binsOf(question, deviation, entries);
	if (bins.length < 2) return { bits: 0, outcomes: [], outcomeOf: new Map() };
	const blur = MISREAD / bins.length;
	const seen = (p: number) => (1 - MISREAD) * p + blur;
	let bits = 0;
	for (const bin of bins) bits -= plogp(seen(bin.weight));
	const weight = new Map<number, number>();
	for (const e of entries) weight.set(e.hypothesis, (weight.get(e.hypothesis) ?? 0) + e.weight);
	for (const [hypothesis, w] of weight)
		for (const bin of bins) bits += w * plogp(seen((bin.of.get(hypothesis) ?? 0) / w));
	const outcomes = bins
		.map((bin): Outcome => {
			const [best] = [...bin.of].sort((x, y) => y[1] - x[1]);
			const fault = leading[best![0]]!.fault;
			return {
				text: rangeText(question, bin),
				chance: bin.weight,
				favours: fault?.where ?? "no fault in the loom",
			};
		})
		.sort((x, y) => y.chance - x.chance);
	return { bits: Math.max(0, bits), outcomes, outcomeOf: likeliest(bins) };
}

function rangeText(question: Question, bin: Bin): string {
	if (!Number.isFinite(bin.low)) return "open";
	const unit = question.what === "ohms" ? "ohm" : question.what === "amps" ? "A" : "V";
	const show = (x: number) => (Math.abs(x) < 0.05 ? "0" : String(Number(x.toPrecision(3))));
	const low = show(bin.low);
	const high = show(bin.high);
	return low === high ? `about ${low} ${unit}` : `${low} to ${high} ${unit}`;
}

function likeliest(bins: readonly Bin[]): Map<number, number> {
	const best = new Map<number, { readonly bin: number; readonly weight: number }>();
	bins.forEach(({ of }, bin) => {
		for (const [hypothesis, weight] of of)
			if (weight > (best.get(hypothesis)?.weight ?? 0)) best.set(hypothesis, { bin, weight });
	});
	return new Map([...best].map(([hypothesis, { bin }]) => [hypothesis, bin]));
}

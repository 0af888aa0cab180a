/**
 * The reading that tells most per minute: mutual information between its outcome and the fault.
 *
 * Outcomes are what the meter can tell apart: predicted values closer than four deviations fall together, 'open'
 * is one of its own. I(outcome; fault) = H(outcome) - sum_f P(f) H(outcome | f), in bits.
 * D. V. Lindley, 'On a measure of the information provided by an experiment', Ann. Math. Stat. 27, 1956.
 */
import type { Circuit } from "../circuit/index.js";
import { placeOf } from "../faults/index.js";
import type { Question } from "../readings/index.js";
import { MISREAD, scaled, scaledDeviation } from "./likelihood.js";
import { Predictions } from "./predictions.js";
import { readingSeen } from "./quantities.js";
import type { NextStep, Outcome } from "./types.js";
import type { Weighed } from "./weighing.js";

/** Minutes of a reading: common practice, no source. */
const MINUTES = { volts: 2, drop: 3, ohms: 4, amps: 3 } as const;

interface Entry {
	readonly hypothesis: number;
	readonly weight: number;
	/** Predicted value; NaN for open. */
	readonly value: number;
}

interface Rated {
	readonly question: Question;
	readonly bits: number;
	readonly minutes: number;
	readonly outcomes: readonly Outcome[];
}

/** Patterns with less than this share of their hypothesis are left out of the prediction. */
const LEAST_PATTERN = 0.02;

export function rateSteps(
	circuit: Circuit,
	needed: ReadonlySet<number>,
	questions: readonly Question[],
	leading: readonly Weighed[],
): NextStep[] {
	const askable = questions.flatMap((question) => {
		const seen = readingSeen(circuit, question);
		return seen ? [{ question, seen }] : [];
	});
	const predictions = new Predictions(
		circuit,
		askable.map((a) => a.seen),
		needed,
	);
	const mass = leading.reduce((sum, w) => sum + w.posterior, 0);
	const weights = leading.flatMap((w, hypothesis) =>
		w.patterns
			.filter((p) => p.chance > LEAST_PATTERN)
			.map((p) => ({
				hypothesis,
				weight: (p.chance * w.posterior) / mass,
				change: p.pattern.change,
			})),
	);
	const rated = askable.map(({ question }, thing): Rated => {
		const entries = weights.map((w): Entry => ({ ...w, value: predictions.number(thing, w.change) }));
		const { bits, outcomes } = information(question, predictions.deviation(thing), entries, leading);
		return { question, bits, minutes: MINUTES[question.what], outcomes };
	});
	return rated
		.filter((r) => r.bits > 0.01)
		.sort((x, y) => y.bits / y.minutes - x.bits / x.minutes)
		.map((r) => step(circuit, r));
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

function information(
	question: Question,
	deviation: number,
	entries: readonly Entry[],
	leading: readonly Weighed[],
): { bits: number; outcomes: Outcome[] } {
	const bins = binsOf(question, deviation, entries);
	if (bins.length < 2) return { bits: 0, outcomes: [] };
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
	return { bits: Math.max(0, bits), outcomes };
}

function rangeText(question: Question, bin: Bin): string {
	if (!Number.isFinite(bin.low)) return "open";
	const unit = question.what === "ohms" ? "ohm" : question.what === "amps" ? "A" : "V";
	const show = (x: number) => (Math.abs(x) < 0.05 ? "0" : String(Number(x.toPrecision(3))));
	const low = show(bin.low);
	const high = show(bin.high);
	return low === high ? `about ${low} ${unit}` : `${low} to ${high} ${unit}`;
}

function step(circuit: Circuit, rated: Rated): NextStep {
	const { question, bits, minutes, outcomes } = rated;
	const { what, from, to, when } = question;
	const place = placeOf(circuit.loom, from);
	const title = circuit.loom.conditions.get(when)?.title || when;
	const words = { volts: "Volts", drop: "Voltage drop", ohms: "Ohms", amps: "Current" }[what];
	const cautions =
		what === "ohms"
			? ["Battery off before the ohmmeter goes on."]
			: ["Keep clear of moving and hot parts; do not spread terminals with the probe."];
	const [first, second] = outcomes;
	return {
		question,
		text: `${words} from ${from} to ${to}, ${title} (${when})${place ? `; ${place}` : ""}`,
		bits,
		minutes,
		because: `${first!.text} would point to ${first!.favours}; ${second!.text} to ${second!.favours}.`,
		outcomes,
		cautions,
	};
}

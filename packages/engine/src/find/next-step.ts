/**
 * The next reading: most information per minute, and where a few suspects are left, the first of the order of
 * readings that isolates the fault in the fewest expected minutes.
 */
import type { Circuit } from "../circuit/index.js";
import { holderOf, placeOf } from "../faults/index.js";
import { conditionWords, type Question } from "../readings/index.js";
import { turningCautions, turningMinutes } from "./engine-turns.js";
import { outcomeWords } from "./information.js";
import { bitsOf, type Entries, likeliest, outcomesOf } from "./outcomes.js";
import type { Reader } from "./reader.js";
import { planTests } from "./sequence.js";
import type { NextStep } from "./types.js";
import type { Weighed } from "./weighing.js";

/** Minutes of a reading: common practice, no source. */
const MINUTES = { volts: 2, drop: 3, ohms: 4, amps: 3 } as const;
/** Minutes more where the car must be set otherwise than for the reading before, or the leads go to another place. */
const SET_ANEW = 1;
const WALK = 0.5;

/** Patterns with less than this share of their hypothesis are left out of the prediction. */
const LEAST_PATTERN = 0.02;
/** A reading that tells less is not worth the walk, in bits. */
const LEAST_BITS = 0.01;
/** Steps put into words. */
const MOST_SHOWN = 6;

interface Rated {
	readonly question: Question;
	readonly bits: number;
	readonly minutes: number;
	readonly values: Float64Array;
	readonly count: number;
	readonly outcomes: Uint8Array;
}

export interface RatedSteps {
	/** Best first. */
	readonly steps: readonly NextStep[];
	/**
	 * For each leading hypothesis the number of its group: those of one group would show the same in every reading
	 * offered.
	 */
	readonly groups: readonly number[];
}

/** @param last the reading taken before this one */
export function rateSteps(
	circuit: Circuit,
	reader: Reader,
	questions: readonly Question[],
	leading: readonly Weighed[],
	last: Question | undefined,
): RatedSteps {
	reader.prepare(questions);
	const mass = leading.reduce((sum, w) => sum + w.posterior, 0);
	const { entries, changes } = entriesOf(leading, mass);
	const rated = questions.flatMap((question): Rated[] => {
		const read = reader.of(question);
		if (read === undefined) return [];
		const values = Float64Array.from(changes, (change) => read.number(change));
		const { count, outcomes } = outcomesOf(question.what, read.deviation(), values);
		const bits = bitsOf(entries, { count, outcomes });
		return [{ question, bits, minutes: minutesOf(circuit, question, last), values, count, outcomes }];
	});
	const useful = rated
		.filter((r) => r.bits > LEAST_BITS)
		.sort((x, y) => y.bits / y.minutes - x.bits / x.minutes);
	const shownIn = ({ count, outcomes }: Rated) => likeliest(entries, count, outcomes);
	const groups = alikeIn(rated.map(shownIn), leading.length);
	const order = plannedFirst(
		useful,
		useful.slice(0, PLANNED_READINGS).map(shownIn),
		groups,
		leading.map((w) => w.posterior / mass),
	);
	return { steps: order.slice(0, MOST_SHOWN).map((r) => step(circuit, r, entries, leading)), groups };
}

function entriesOf(leading: readonly Weighed[], mass: number) {
	const kept = leading.map((w) => w.patterns.filter((p) => p.chance > LEAST_PATTERN));
	const first = new Int32Array(leading.length + 1);
	kept.forEach((patterns, h) => {
		first[h + 1] = first[h]! + patterns.length;
	});
	const weights = kept.flatMap((patterns, h) => {
		const chance = patterns.reduce((sum, p) => sum + p.chance, 0);
		return patterns.map((p) => ((p.chance / chance) * leading[h]!.posterior) / mass);
	});
	const changes = kept.flatMap((patterns) => patterns.map((p) => p.pattern.change));
	const entries: Entries = { first, weights: Float64Array.from(weights) };
	return { entries, changes };
}

/** @param last the reading taken before this one */
export function minutesOf(
	circuit: Circuit,
	{ what, from, to, when }: Question,
	last: Question | undefined,
): number {
	const { loom } = circuit;
	const holder = (id: string) => holderOf(loom, id.replace(/!pin$/, ""));
	const open = new Set(last === undefined ? [] : [last.from, last.to].map(holder));
	let reach = 0;
	// The lead on the battery stays where it is.
	for (const part of new Set([from, to].map(holder)))
		if (part && !open.has(part) && part.kind !== "battery") reach += part.reachMinutes ?? 0;
	const anew = last !== undefined && last.when !== when ? SET_ANEW : 0;
	const walk = last !== undefined && placeOf(loom, last.from) !== placeOf(loom, from) ? WALK : 0;
	return MINUTES[what] + reach + anew + walk + turningMinutes(circuit, when);
}

/** Group numbers of hypotheses that show the same in all of these readings. */
function alikeIn(shown: readonly Uint8Array[], hypotheses: number): number[] {
	const numbers = new Map<string, number>();
	return Array.from({ length: hypotheses }, (_, h) => {
		const key = shown.map((row) => row[h]).join();
		const known = numbers.get(key) ?? numbers.size;
		numbers.set(key, known);
		return known;
	});
}

/** Groups of suspects that an order of readings is planned for, and readings it may use. */
const PLANNED_SUSPECTS = 10;
const PLANNED_READINGS = 14;

/**
 * Moves the reading to the front with which the cheapest order of readings begins, one more look ahead than bits.
 * @param shown the outcome of each hypothesis, of the first few useful readings
 */
function plannedFirst(
	useful: readonly Rated[],
	shown: readonly Uint8Array[],
	groups: readonly number[],
	weights: readonly number[],
): readonly Rated[] {
	const of = new Map<number, { first: number; weight: number }>();
	groups.forEach((group, h) => {
		const known = of.get(group);
		if (known) known.weight += weights[h]!;
		else of.set(group, { first: h, weight: weights[h]! });
	});
	// The less probable suspects are left to the readings after this one.
	const suspects = [...of.values()].sort((x, y) => y.weight - x.weight).slice(0, PLANNED_SUSPECTS);
	const { test } = planTests({
		weights: suspects.map(({ weight }) => weight),
		tests: shown.map((row, k) => ({
			cost: useful[k]!.minutes,
			outcomes: suspects.map(({ first }) => row[first]!),
		})),
	});
	const first = useful[test];
	return first === undefined ? useful : [first, ...useful.filter((r) => r !== first)];
}

function step(circuit: Circuit, rated: Rated, entries: Entries, leading: readonly Weighed[]): NextStep {
	const { question, bits, minutes, values } = rated;
	const outcomes = outcomeWords(question, entries, values, rated.outcomes, leading);
	const [first, second] = outcomes;
	return {
		question,
		text: stepText(circuit, question),
		bits,
		minutes,
		because: `${first!.text} would point to ${first!.favours}; ${second!.text} to ${second!.favours}.`,
		outcomes,
		cautions: cautionsOf(circuit, question),
		again: false,
	};
}

/** `Ohms from F1.out to L1.a, all off (battery-off); dash`. */
export function stepText(circuit: Circuit, { what, from, to, when }: Question): string {
	const place = placeOf(circuit.loom, from);
	const title = circuit.loom.conditions.get(when)?.title;
	const words = { volts: "Volts", drop: "Voltage drop", ohms: "Ohms", amps: "Current" }[what];
	return `${words} from ${from} to ${to}, ${title ? `${title} (${when})` : conditionWords(circuit.loom, when)}${place ? `; ${place}` : ""}`;
}

export const cautionsOf = (circuit: Circuit, { what, when }: Question): readonly string[] => [
	...turningCautions(circuit, when),
	what === "ohms"
		? "Battery off before the ohmmeter goes on."
		: "Keep clear of moving and hot parts; do not spread terminals with the probe.",
];

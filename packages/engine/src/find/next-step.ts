/**
 * The next reading: most information per minute, and where a few suspects are left, the first of the order of
 * readings that isolates the fault in the fewest expected minutes.
 */
import type { Circuit } from "../circuit/index.js";
import { placeOf } from "../faults/index.js";
import type { Question } from "../readings/index.js";
import { type Entry, information } from "./information.js";
import { Predictions } from "./predictions.js";
import { readingSeen } from "./quantities.js";
import { planTests } from "./sequence.js";
import type { NextStep, Outcome } from "./types.js";
import type { Weighed } from "./weighing.js";

/** Minutes of a reading: common practice, no source. */
const MINUTES = { volts: 2, drop: 3, ohms: 4, amps: 3 } as const;

interface Rated {
	readonly question: Question;
	readonly bits: number;
	readonly minutes: number;
	readonly outcomes: readonly Outcome[];
	readonly outcomeOf: ReadonlyMap<number, number>;
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
		const { bits, outcomes, outcomeOf } = information(
			question,
			predictions.deviation(thing),
			entries,
			leading,
		);
		return { question, bits, minutes: MINUTES[question.what], outcomes, outcomeOf };
	});
	const useful = rated.filter((r) => r.bits > 0.01).sort((x, y) => y.bits / y.minutes - x.bits / x.minutes);
	return plannedFirst(
		useful,
		leading.map((w) => w.posterior / mass),
	).map((r) => step(circuit, r));
}

/** Suspects that an order of readings is planned for, and readings it may use. */
const PLANNED_SUSPECTS = 12;
const PLANNED_READINGS = 14;

/** Moves the reading to the front with which the cheapest order of readings begins, one more look ahead than bits. */
function plannedFirst(useful: readonly Rated[], weights: readonly number[]): readonly Rated[] {
	const tests = useful.slice(0, PLANNED_READINGS).map(({ minutes, outcomeOf }) => ({
		cost: minutes,
		outcomes: weights.map((_, hypothesis) => outcomeOf.get(hypothesis) ?? -1),
	}));
	// The less probable suspects are left to the readings after this one.
	const suspects = [...weights.keys()].sort((x, y) => weights[y]! - weights[x]!).slice(0, PLANNED_SUSPECTS);
	const { test } = planTests({
		weights: suspects.map((k) => weights[k]!),
		tests: tests.map(({ cost, outcomes }) => ({ cost, outcomes: suspects.map((k) => outcomes[k]!) })),
	});
	const first = useful[test];
	return first === undefined ? useful : [first, ...useful.filter((r) => r !== first)];
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

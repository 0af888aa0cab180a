/** Whatever is seen, asked and refused: no step goes to a restraint circuit. */
import fc from "fast-check";
import { expect, it } from "vitest";
import { forbidden, forbiddenWork, type Question } from "../readings/index.js";
import { demoCar } from "../test-support/demo.test-helper.js";
import { explainFault, findFaults } from "./find.js";
import type { Evidence, Found, Occasion, TakenReading } from "./types.js";

const car = demoCar("main");
const loom = car.converted;
const contacts = [...loom.contacts.keys()];
const restraint = contacts.filter((id) => forbidden(loom, id) !== undefined);
const parts = [...loom.parts.keys()];
const near = parts.filter((id) => forbiddenWork(loom, [id]) !== undefined);
const units = [...new Set(loom.monitors.map(({ unit }) => unit))];
const codes = loom.monitors.map(({ code }) => code);
const airbag = loom.monitors.filter(({ unit }) => unit === "RCU").map(({ code }) => code);

const point = fc.oneof(
	fc.constantFrom(...restraint),
	fc.constantFrom(...restraint).map((id) => `${id}!pin`),
	fc.constantFrom(...contacts),
	fc.constantFrom("Q-DRV", "no such contact"),
);
const readingIn = (when: string): fc.Arbitrary<TakenReading> =>
	fc.record({
		what: fc.constantFrom("volts" as const, "ohms" as const, "drop" as const, "amps" as const),
		from: point,
		to: point,
		when: fc.constant(when),
		value: fc.oneof(fc.double({ min: -1, max: 14, noNaN: true }), fc.constant("open" as const)),
	});
const occasionIn = (when: string): fc.Arbitrary<Occasion> =>
	fc.record({
		note: fc.constant(""),
		reseated: fc.oneof(fc.constant(""), fc.constantFrom(...near), fc.constantFrom(...parts)),
		codes: fc.option(
			fc.uniqueArray(
				airbag.length > 0
					? fc.oneof(fc.constantFrom(...airbag), fc.constantFrom(...codes))
					: fc.constantFrom(...codes),
				{ maxLength: 2 },
			),
			{ nil: undefined },
		),
		units: fc.uniqueArray(fc.constantFrom(...units), { maxLength: 2 }),
		functions: fc.dictionary(fc.constantFrom(...loom.functions.map((f) => f.function)), fc.boolean(), {
			maxKeys: 1,
		}),
		readings: fc.array(readingIn(when), { maxLength: 2 }),
		bench: fc.dictionary(fc.constantFrom(...near, ...parts), fc.boolean(), { maxKeys: 1 }),
	});
/** One condition for all readings of a case: each further one is a second of work. */
const evidence: fc.Arbitrary<Evidence> = fc
	.constantFrom(...loom.conditions.keys(), "no such condition")
	.chain((when) =>
		fc.record({
			title: fc.constant(""),
			of: fc.constant("converted" as const),
			occasions: fc.array(occasionIn(when), { minLength: 1, maxLength: 2 }),
		}),
	);

const clear = ({ from, to }: Question) => {
	for (const name of [from, to]) expect(forbidden(loom, name.replace(/!pin$/, "")), name).toBeUndefined();
};

function check({ next, others, actions }: Found): Question[] {
	const steps = [...(next ? [next] : []), ...others].map(({ question }) => question);
	steps.forEach(clear);
	for (const { part } of actions) expect(forbiddenWork(loom, [part]), part).toBeUndefined();
	return steps;
}

it("no reading and no reseating is offered there, nor anything predicted", { timeout: 180_000 }, () => {
	fc.assert(
		fc.property(evidence, fc.constantFrom(...near), (seen, part) => {
			const refused: Question[] = [];
			for (let round = 0; round < 3; round++) {
				const steps = check(findFaults(car, seen, refused));
				for (const step of steps) expect(refused).not.toContainEqual(step);
				if (steps.length === 0) break;
				refused.push(...steps);
			}
			const fault = `connector not locked:${part}`;
			const known = findFaults(car, seen).faults.map(({ id }) => id);
			for (const id of known.includes(fault) ? [fault] : known.slice(0, 1)) {
				const { taken, notTaken, refutes } = explainFault(car, seen, id);
				for (const { question } of [...taken, ...notTaken, ...refutes]) clear(question);
			}
		}),
		{ seed: 80, numRuns: 6 },
	);
});

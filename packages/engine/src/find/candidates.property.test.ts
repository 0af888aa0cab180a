/** Whatever is suspected and whatever was seen: no reading is proposed in a restraint circuit, none twice. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { faultSet } from "../faults/index.js";
import { forbidden, takeReading } from "../readings/index.js";
import { demoCar } from "../test-support/demo.test-helper.js";
import { candidates } from "./candidates.js";
import type { Evidence, Occasion, TakenReading } from "./types.js";
import type { Weighed } from "./weighing.js";

const car = demoCar("main");
const loom = car.converted;
const circuit = car.circuit("converted");
const faults = faultSet({ circuit, loom, touched: car.touched, steps: new Map() });
/** Faults in or beside a restraint circuit. */
const near = faults.filter(({ path }) =>
	path.some(
		(id) =>
			forbidden(loom, id) !== undefined ||
			(loom.parts.get(id) ?? loom.wires.get(id))?.marks.includes("pyrotechnic"),
	),
);

const contacts = [...loom.contacts.keys()];
const conditions = [...loom.conditions.keys()];
const reading: fc.Arbitrary<TakenReading> = fc.record({
	what: fc.constantFrom("volts" as const, "ohms" as const),
	from: fc.constantFrom(...contacts),
	to: fc.constantFrom("BAT.-", ...contacts),
	when: fc.constantFrom(...conditions),
	value: fc.oneof(fc.double({ min: 0, max: 14, noNaN: true }), fc.constant("open" as const)),
});
const occasion: fc.Arbitrary<Occasion> = fc.record({
	note: fc.constant(""),
	reseated: fc.constantFrom("", "X-RCU", "X-ECUA"),
	codes: fc.option(
		fc.uniqueArray(fc.constantFrom(...loom.monitors.map(({ code }) => code)), { maxLength: 4 }),
		{
			nil: undefined,
		},
	),
	units: fc.constantFrom([], ["RCU"], ["ECU"]),
	functions: fc.dictionary(fc.constantFrom(...loom.functions.map((f) => f.function)), fc.boolean(), {
		maxKeys: 3,
	}),
	readings: fc.array(reading, { maxLength: 3 }),
	bench: fc.constant({}),
});
const evidence: fc.Arbitrary<Evidence> = fc.record({
	title: fc.constant(""),
	of: fc.constant("converted" as const),
	occasions: fc.array(occasion, { minLength: 1, maxLength: 3 }),
});
const leading: fc.Arbitrary<Weighed[]> = fc
	.array(fc.oneof(fc.constantFrom(...near), fc.constantFrom(...faults)), { minLength: 1, maxLength: 60 })
	.map((list) =>
		list.map((fault) => ({
			fault,
			posterior: 1 / list.length,
			first: -1,
			comesAndGoes: 0,
			patterns: fault.patterns.map((pattern) => ({ pattern, chance: pattern.weight })),
		})),
	);

describe("candidate readings", () => {
	it("there are restraint circuits to keep away from", () => {
		expect(near.length).toBeGreaterThan(100);
	});

	it("none touches a restraint circuit, and each can be taken", () => {
		const known = new Map<string, boolean>();
		fc.assert(
			fc.property(leading, evidence, (weighed, seen) => {
				for (const question of candidates(circuit, weighed, seen)) {
					const { what, from, to, when } = question;
					expect(forbidden(loom, from), from).toBeUndefined();
					expect(forbidden(loom, to), to).toBeUndefined();
					expect(from).not.toBe(to);
					// Taking it is the dear part: each contact once, by each meter, is enough.
					const key = `${what} ${from}`;
					if (known.has(key) || known.size > 150) continue;
					known.set(key, true);
					expect(() => takeReading(circuit, { what, from, to, when })).not.toThrow();
				}
			}),
			{ seed: 40, numRuns: 150 },
		);
		expect(known.size).toBeGreaterThan(50);
	});

	it("none was taken already", () => {
		fc.assert(
			fc.property(leading, evidence, fc.nat(), (weighed, seen, pick) => {
				const before = candidates(circuit, weighed, seen);
				fc.pre(before.length > 0);
				const taken = { ...before[pick % before.length]!, value: 1 };
				const [first, ...others] = seen.occasions;
				const occasions = [{ ...first!, readings: [...first!.readings, taken] }, ...others];
				const after = candidates(circuit, weighed, { ...seen, occasions });
				const { value, ...question } = taken;
				expect(after).not.toContainEqual(question);
			}),
			{ seed: 41, numRuns: 100 },
		);
	});
});

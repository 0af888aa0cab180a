import fc from "fast-check";
import { expect, test } from "vitest";
import { numberLine, roundStep } from "./gauge.js";

test("steps are 1, 2 or 5 times a power of ten", () => {
	expect(roundStep(10, 5)).toBe(2);
	expect(roundStep(0.9, 6)).toBeCloseTo(0.2, 12);
	expect(roundStep(42, 6)).toBe(10);
});

const finite = fc.double({ min: -1e5, max: 1e5, noNaN: true });

test("the line holds every value between its ends, in few even ticks", () => {
	fc.assert(
		fc.property(fc.array(finite, { minLength: 1, maxLength: 4 }), (values) => {
			const { from, to, ticks } = numberLine(values);
			for (const value of values) {
				expect(value).toBeGreaterThanOrEqual(from - 1e-9);
				expect(value).toBeLessThanOrEqual(to + 1e-9);
			}
			expect(ticks.length).toBeGreaterThanOrEqual(2);
			expect(ticks.length).toBeLessThanOrEqual(16);
			expect(ticks.at(-1)).toBeCloseTo(to, 6);
		}),
		{ seed: 3, numRuns: 300 },
	);
});

test("what cannot be below zero starts at zero", () => expect(numberLine([0.1, 0.3]).from).toBe(0));

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { POOR_OHMS } from "../patterns.js";
import { loosePatterns } from "./common-cause.js";

const housings = fc.record({
	branches: fc.uniqueArray(fc.nat({ max: 999 }), { minLength: 1, maxLength: 40 }),
	seed: fc.integer({ min: 1, max: 2 ** 31 - 1 }),
	touched: fc.boolean(),
});
const RUNS = { seed: 30, numRuns: 200 };

describe("ways in which a loose housing shows itself", () => {
	it("weights sum to 1, each contact is out alone in some way, no other branch is touched", () => {
		fc.assert(
			fc.property(housings, ({ branches, seed, touched }) => {
				const patterns = loosePatterns(branches, seed, touched);
				expect(Math.abs(patterns.reduce((sum, p) => sum + p.weight, 0) - 1)).toBeLessThan(1e-12);
				for (const { change } of patterns) {
					expect(change.added).toEqual([]);
					const own = change.branches.map(({ branch }) => branch);
					expect(new Set(own).size).toBe(own.length);
					for (const branch of own) expect(branches).toContain(branch);
				}
				for (const branch of branches) {
					const alone = patterns.filter(
						({ change }) => change.branches.length === 1 && change.branches[0]!.branch === branch,
					);
					expect(alone.length).toBeGreaterThanOrEqual(1 + POOR_OHMS.length);
				}
			}),
			RUNS,
		);
	});

	it("one that nobody touched has one bad contact at most", () => {
		fc.assert(
			fc.property(housings, ({ branches, seed }) => {
				for (const { change } of loosePatterns(branches, seed, false))
					expect(change.branches.length).toBeLessThanOrEqual(1);
			}),
			RUNS,
		);
	});

	it("one that was worked on may have several, and is good at the moment in some", () => {
		const patterns = loosePatterns([1, 2, 3, 4, 5, 6, 7, 8], 7919, true);
		expect(patterns.some(({ change }) => change.branches.length === 0)).toBe(true);
		expect(patterns.some(({ change }) => change.branches.length === 2)).toBe(true);
		expect(patterns.some(({ change }) => change.branches.length > 2)).toBe(true);
	});

	it("the same housing gives the same ways each time", () => {
		expect(loosePatterns([3, 5, 8], 42, true)).toEqual(loosePatterns([3, 5, 8], 42, true));
	});
});

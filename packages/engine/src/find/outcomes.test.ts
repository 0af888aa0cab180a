/** Outcomes that a meter tells apart, by hand, and the bits of a reading against the definition. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { MISREAD } from "./likelihood.js";
import { bitsOf, type Entries, likeliest, outcomesOf } from "./outcomes.js";

describe("outcomes", () => {
	// Deviation 0.05 V, and the meter's 0.5 % + 10 mV, half of that its deviation: four are 0.2 V and a little.
	it("values nearer than four deviations are one; a chain of such is one too", () => {
		const values = Float64Array.of(12, 0, 5, 0.15, 0.3, 12.1);
		const { count, outcomes } = outcomesOf("volts", 0.05, values);
		expect(count).toBe(3);
		expect([...outcomes]).toEqual([2, 0, 1, 0, 0, 2]);
	});

	it("a floating wire shows next to nothing: as 0 V where something shows that, else an outcome of its own", () => {
		const open = Number.NaN;
		expect([...outcomesOf("volts", 0.05, Float64Array.of(open, 0, 5)).outcomes]).toEqual([0, 0, 1]);
		const own = outcomesOf("volts", 0.05, Float64Array.of(open, 3, 5));
		expect(own.count).toBe(3);
		expect([...own.outcomes]).toEqual([2, 0, 1]);
		expect(outcomesOf("ohms", 0.01, Float64Array.of(open, 0)).count).toBe(2);
		expect(outcomesOf("ohms", 0.01, Float64Array.of(open, open))).toMatchObject({ count: 1 });
	});

	it("ohms are told apart by their ratio", () => {
		const { outcomes } = outcomesOf("ohms", 0, Float64Array.of(1000, 1010, 2000, 100_000, 100_500));
		expect([...outcomes]).toEqual([0, 0, 1, 2, 2]);
	});
});

describe("bits", () => {
	const entropy = (chances: number[]) =>
		chances.reduce((sum, p) => (p > 0 ? sum - p * Math.log2(p) : sum), 0);
	/** H(hypothesis) - sum over outcomes of P(outcome) H(hypothesis | outcome). */
	function definition({ first, weights }: Entries, count: number, outcomes: Uint8Array): number {
		const joint = Array.from({ length: first.length - 1 }, (_, h) => {
			const row = new Array<number>(count).fill(0);
			for (let e = first[h]!; e < first[h + 1]!; e++)
				for (let o = 0; o < count; o++)
					row[o]! += weights[e]! * ((outcomes[e] === o ? 1 - MISREAD : 0) + MISREAD / count);
			return row;
		});
		let bits = entropy(joint.map((row) => row.reduce((sum, p) => sum + p, 0)));
		for (let o = 0; o < count; o++) {
			const chance = joint.reduce((sum, row) => sum + row[o]!, 0);
			bits -= chance * entropy(joint.map((row) => row[o]! / chance));
		}
		return bits;
	}

	const ways = fc.array(
		fc.array(fc.tuple(fc.nat(4), fc.integer({ min: 1, max: 100 })), { minLength: 1, maxLength: 4 }),
		{
			minLength: 1,
			maxLength: 30,
		},
	);
	it.each(["several ways each", "one way each"])("as by the definition, %s", (sort) => {
		fc.assert(
			fc.property(ways, (drawn) => {
				const list = sort === "one way each" ? drawn.map((row) => row.slice(0, 1)) : drawn;
				const all = list.flat();
				const sum = all.reduce((total, [, w]) => total + w, 0);
				const first = new Int32Array(list.length + 1);
				list.forEach((row, h) => {
					first[h + 1] = first[h]! + row.length;
				});
				const entries = { first, weights: Float64Array.from(all, ([, w]) => w / sum) };
				const outcomes = Uint8Array.from(all, ([outcome]) => outcome);
				const bits = bitsOf(entries, { count: 5, outcomes });
				expect(bits).toBeCloseTo(Math.max(0, definition(entries, 5, outcomes)), 9);
				expect(bits).toBeLessThanOrEqual(Math.log2(5));
				const shown = likeliest(entries, 5, outcomes);
				list.forEach((row, h) => {
					expect(row.map(([outcome]) => outcome)).toContain(shown[h]);
				});
			}),
			{ seed: 90, numRuns: 200 },
		);
	});
});

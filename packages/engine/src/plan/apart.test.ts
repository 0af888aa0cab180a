import fc from "fast-check";
import { expect, test } from "vitest";
import { inPieces } from "./apart.js";
import { held, type Program, type Solved } from "./program.js";

/** Tries all values of all columns. */
function exhaustive({ costs, upper, rows }: Program): Solved {
	let best: Solved = { values: [], objective: Number.POSITIVE_INFINITY, bound: Number.POSITIVE_INFINITY };
	for (let bits = 0; bits < 1 << costs.length; bits++) {
		const values = costs.map((_, k) => (bits >> k) & 1);
		if (values.some((value, k) => value > upper[k]!)) continue;
		const kept = rows.every(({ terms, low, high }) => {
			const sum = terms.reduce((total, [k, c]) => total + c * values[k]!, 0);
			return sum >= (low ?? sum) && sum <= (high ?? sum);
		});
		const objective = values.reduce<number>((sum, value, k) => sum + value * costs[k]!, 0);
		if (kept && objective < best.objective) best = { values, objective, bound: objective };
	}
	return best;
}

const programs = fc.integer({ min: 1, max: 8 }).chain((columns) => {
	const terms = fc
		.uniqueArray(fc.tuple(fc.nat(columns - 1), fc.constantFrom(-1, 1, 2)), {
			selector: ([k]) => k,
			minLength: 1,
			maxLength: 3,
		})
		.map((list) => list as [number, number][]);
	const limit = fc.option(fc.integer({ min: -2, max: 2 }), { nil: undefined });
	return fc.record({
		costs: fc.array(fc.integer({ min: -5, max: 9 }), { minLength: columns, maxLength: columns }),
		upper: fc.array(fc.constantFrom(1, 1, 1, 0), { minLength: columns, maxLength: columns }),
		rows: fc.array(fc.record({ terms, low: limit, high: limit }), { maxLength: 5 }),
	});
});

test("in pieces as whole: same least cost, and values that keep the rows", () => {
	fc.assert(
		fc.property(programs, (program) => {
			const [whole, pieces] = [exhaustive(program), inPieces(exhaustive)(program)];
			expect(pieces.objective).toBe(whole.objective);
			expect(pieces.values.length).toBe(whole.values.length);
			if (whole.values.length === 0) return;
			const fixed: Program = {
				...program,
				rows: [
					...program.rows,
					...pieces.values.map((value, k) => ({ terms: [[k, 1] as const], low: value, high: value })),
				],
			};
			expect(exhaustive(fixed).objective).toBe(whole.objective);
		}),
		{ seed: 5, numRuns: 300 },
	);
});

test("a piece solved before is not solved again", () => {
	let asked = 0;
	const solver = inPieces((program) => {
		asked++;
		return exhaustive(program);
	});
	const pair = (a: number, b: number) => ({ terms: [[a, 1] as const, [b, 1] as const], low: 1, high: 1 });
	const program: Program = { costs: [3, 1, 2, 5], upper: [1, 1, 1, 1], rows: [pair(0, 1), pair(2, 3)] };
	expect(solver(program)).toMatchObject({ values: [0, 1, 1, 0], objective: 3 });
	expect(asked).toBe(2);
	expect(solver(held(program, [1])).values).toEqual([1, 0, 1, 0]);
	expect(asked).toBe(3);
	expect(solver(held(program, [], [3])).objective).toBe(6);
});

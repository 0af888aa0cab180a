import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { lagrangianBound } from "./bound.js";
import { covers, leastCover } from "./brute-force.test-helper.js";
import { cover } from "./cover.js";
import { exchanged, greedyCover, needed } from "./greedy.js";
import type { CoverProblem } from "./problem.js";
import { reduce } from "./reduce.js";

const byNumber = (column: number) => column;

/** Rows as sets of columns of at most 12. */
const problem = fc
	.record({
		columns: fc.integer({ min: 1, max: 12 }),
		rows: fc.array(fc.array(fc.nat({ max: 11 }), { maxLength: 5 }), { maxLength: 25 }),
	})
	.map(({ columns, rows }): CoverProblem => {
		const inside = rows.map((row) => [...new Set(row.map((c) => c % columns))].sort((x, y) => x - y));
		return { columns, rows: inside };
	});

const runs = { seed: 7, numRuns: 400 };

describe("by hand", () => {
	test("nothing to cover needs nothing", () => {
		expect(cover({ rows: [], columns: 3 })).toEqual({ chosen: [], lowerBound: 0 });
		expect(cover({ rows: [[], []], columns: 3 })).toEqual({ chosen: [], lowerBound: 0 });
	});

	test("a column that stands alone on a row is in, and with it all its rows", () => {
		expect(
			cover({
				rows: [[1], [0, 1], [1, 2]],
				columns: 3,
			}),
		).toEqual({ chosen: [1], lowerBound: 1 });
	});

	// Greedy begins with the column of 4 rows; the two others, needed anyway, make it needless.
	test("the column of most rows goes again where the others cover all", () => {
		const rows = [[0, 1], [0, 1], [1], [0, 2], [0, 2], [2]];
		expect(greedyCover({ rows, columns: 3 }, new Float64Array(6).fill(1), byNumber)).toEqual([1, 2]);
		expect(cover({ rows, columns: 3 })).toEqual({ chosen: [1, 2], lowerBound: 2 });
	});

	// Five rows in a ring, each column on two next to each other: 2.5 by the linear programme, 3 by whole columns.
	test("a ring of five needs three, and the bound says more than two", () => {
		const rows = Array.from({ length: 5 }, (_, r) => [r, (r + 1) % 5].sort((x, y) => x - y));
		const bound = lagrangianBound({ rows, columns: 5 }, 3);
		expect(bound.value).toBeGreaterThan(2);
		expect(bound.value).toBeLessThanOrEqual(2.5 + 1e-9);
		const found = cover({ rows, columns: 5 });
		expect(found.chosen).toHaveLength(3);
		expect(found.lowerBound).toBe(3);
	});

	test("of columns that cover the same the one of lower rank is taken", () => {
		const rows = [
			[0, 1, 2],
			[0, 1, 2],
		];
		const rank = (column: number) => [3, 1, 2][column]!;
		expect(cover({ rows, columns: 3 }, { rank }).chosen).toEqual([1]);
	});

	test("one column stands in for two", () => {
		const rows = [
			[0, 2],
			[1, 2],
		];
		expect(exchanged({ rows, columns: 3 }, [0, 1], byNumber)).toEqual([2]);
	});
});

describe("on random problems, against trying every set", () => {
	test("the cover is one, as small as can be, and the bound meets it", () => {
		fc.assert(
			fc.property(problem, (p) => {
				const least = leastCover(p);
				const { chosen, lowerBound } = cover(p);
				expect(covers(p, chosen)).toBe(true);
				expect(chosen).toHaveLength(least);
				expect(lowerBound).toBe(least);
			}),
			runs,
		);
	});

	test("reducing changes neither the least size nor what is covered", () => {
		fc.assert(
			fc.property(problem, (p) => {
				const { forced, rows } = reduce(p, byNumber);
				expect(forced.length + leastCover({ rows, columns: p.columns })).toBe(leastCover(p));
			}),
			runs,
		);
	});

	test("the bound holds for any cover, greedy covers cover", () => {
		fc.assert(
			fc.property(problem, (given) => {
				const p = { ...given, rows: given.rows.filter((row) => row.length > 0) };
				fc.pre(p.rows.length > 0);
				const greedy = greedyCover(p, new Float64Array(p.rows.length).fill(1), byNumber);
				expect(covers(p, greedy)).toBe(true);
				expect(lagrangianBound(p, greedy.length).value).toBeLessThanOrEqual(leastCover(p) + 1e-9);
				expect(needed(p, greedy, byNumber)).toEqual([...greedy].sort((x, y) => x - y));
			}),
			runs,
		);
	});

	test("cut off early, cover and bound still hold", () => {
		fc.assert(
			fc.property(problem, (p) => {
				const { chosen, lowerBound } = cover(p, { nodes: 0 });
				expect(covers(p, chosen)).toBe(true);
				expect(lowerBound).toBeLessThanOrEqual(leastCover(p));
			}),
			runs,
		);
	});
});

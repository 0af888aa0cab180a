import fc from "fast-check";
import { expect, test } from "vitest";
import { convenient } from "./convenient.js";
import { covers } from "./cover/brute-force.test-helper.js";
import { cover } from "./cover/cover.js";

test("a reading alone at its place gives way to one where others are", () => {
	const rows = [[0], [1, 2]];
	const places = ["dash", "roof", "dash"];
	expect(convenient({ rows, columns: 3 }, [0, 1], (column) => places[column]!)).toEqual([0, 2]);
});

test("never more readings, never less covered, never more places", () => {
	const column = fc.nat({ max: 11 });
	fc.assert(
		fc.property(
			fc.array(fc.uniqueArray(column, { minLength: 1, maxLength: 5 }), { maxLength: 20 }),
			fc.array(fc.nat({ max: 4 }), { minLength: 12, maxLength: 12 }),
			(given, places) => {
				const problem = { rows: given.map((row) => row.sort((x, y) => x - y)), columns: 12 };
				const { chosen } = cover(problem);
				const better = convenient(problem, chosen, (k) => String(places[k]));
				const count = (list: readonly number[]) => new Set(list.map((k) => places[k])).size;
				expect(covers(problem, better)).toBe(true);
				expect(better).toHaveLength(chosen.length);
				expect(count(better)).toBeLessThanOrEqual(count(chosen));
			},
		),
		{ seed: 3, numRuns: 300 },
	);
});

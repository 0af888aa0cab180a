import { expect, test } from "vitest";
import { reference } from "../units/reference.test-helper.js";
import { gatesOf, holdsFor } from "./fuse-gates.js";

// Source: reference/electrical/fuse-gates.csv, row by row.
test.each(reference("fuse-gates"))("$body fuse at $percent %", (row) => {
	for (const rating of [Number(row.amps_from), Number(row.amps_to)]) {
		const gate = gatesOf(rating).find(({ share }) => share === Number(row.percent) / 100)!;
		expect(gate).toEqual({
			share: Number(row.percent) / 100,
			least: Number(row.min_open_s),
			most: row.max_open_s === "" ? undefined : Number(row.max_open_s),
			source: `reference/electrical/fuse-gates.csv ${row.id!.slice(-3)}`,
		});
	}
});

test("the table has no gate that is not here", () => {
	expect(gatesOf(10).length + gatesOf(80).length).toBe(reference("fuse-gates").length);
});

test("how long a fuse of 10 A holds", () => {
	expect(holdsFor(10, 11)).toBeUndefined();
	for (const { share, least } of gatesOf(10).slice(1)) expect(holdsFor(10, 10 * share)).toBeCloseTo(least, 9);
	// Halfway between 200 and 350 % on the logarithm, 26.46 A: the mean of the times' logarithms.
	expect(holdsFor(10, 10 * Math.sqrt(2 * 3.5))).toBeCloseTo(Math.sqrt(0.15 * 0.04), 9);
	expect(holdsFor(10, 100)).toBeLessThan(0.02);
});

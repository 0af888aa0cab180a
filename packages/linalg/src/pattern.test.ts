import { describe, expect, it } from "vitest";
import { checkPattern, networkPattern } from "./pattern.js";

describe("networkPattern", () => {
	it("gives every edge and diagonal entry its place", () => {
		// edges 0-1, 1-0 (parallel), 2-reference, 1-1 (a loop), 2-1
		const p = networkPattern(3, [0, 1, 2, 1, 2], [1, 0, -1, 1, 1]);
		expect([...p.colPtr]).toEqual([0, 2, 4, 5]);
		expect([...p.rowIdx]).toEqual([0, 1, 1, 2, 2]);
		expect([...p.diagonal]).toEqual([0, 2, 4]);
		expect([...p.edge]).toEqual([1, 1, -1, -1, 3]);
	});

	it("names an edge outside the network", () => {
		expect(() => networkPattern(2, [0], [2])).toThrow("edge 0 joins 0 and 2, but nodes are 0..1");
		expect(() => networkPattern(2, [0], [])).toThrow("1 edge starts but 0 edge ends");
	});
});

describe("checkPattern", () => {
	const ints = (...v: number[]) => Int32Array.from(v);
	it.each([
		[-1, ints(0), ints(), "order must be a whole number >= 0, got -1"],
		[2, ints(0, 1), ints(0), "colPtr must have 3 entries for order 2, got 2"],
		[1, ints(1, 1), ints(0), "colPtr[0] must be 0, got 1"],
		[2, ints(0, 2, 1), ints(0, 1), "colPtr must not fall: column 1 has 2 then 1"],
		[2, ints(0, 1, 3), ints(0, 1), "rowIdx must have at least 3 entries, got 2"],
		[2, ints(0, 1, 2), ints(0, 2), "row 2 in column 1 is outside 0..1"],
	])("refuses n = %i, colPtr %o, rowIdx %o", (n, colPtr, rowIdx, message) => {
		expect(() => checkPattern(n, colPtr, rowIdx)).toThrow(message);
	});
});

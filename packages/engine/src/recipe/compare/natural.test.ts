import fc from "fast-check";
import { expect, test } from "vitest";
import { naturalOrder } from "./natural.js";

test("as people count", () => {
	const names = ["C10", "2", "C2", "10", "", "1", "C2.10", "C2.9", "A12b", "A12a", "02"];
	expect(names.sort(naturalOrder)).toEqual([
		"1",
		"02",
		"2",
		"10",
		"A12a",
		"A12b",
		"C2",
		"C2.9",
		"C2.10",
		"C10",
		"",
	]);
});

test("is a total order: antisymmetric, transitive, equal only for equal names", () => {
	const name = fc.stringMatching(/^[A-C]?[0-9]{0,3}[.a]?[0-9]{0,2}$/);
	fc.assert(
		fc.property(name, name, name, (a, b, c) => {
			expect(Math.sign(naturalOrder(a, b))).toBe(-Math.sign(naturalOrder(b, a)) + 0);
			expect(naturalOrder(a, b) === 0).toBe(a === b);
			if (naturalOrder(a, b) <= 0 && naturalOrder(b, c) <= 0)
				expect(naturalOrder(a, c)).toBeLessThanOrEqual(0);
		}),
		{ seed: 1 },
	);
});

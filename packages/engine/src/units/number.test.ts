import fc from "fast-check";
import { expect, test } from "vitest";
import { parseNumber } from "./number.js";

test.each([
	["12", 12],
	[" -0.5 ", -0.5],
	["1e-3", 0.001],
	["5.", 5],
])("%s is %f", (text, value) => {
	expect(parseNumber(text)).toEqual({ ok: true, value });
});

test.each(["", "1 2", "0x10", "Infinity", "NaN", "1e999", "1.2.3", "--1"])("%s is no number", (text) => {
	expect(parseNumber(text).ok).toBe(false);
});

test("a decimal comma is named and mended", () => {
	expect(parseNumber("0,75")).toEqual({
		ok: false,
		problem: '"0,75" has a decimal comma',
		wanted: "a decimal point: 0.75",
	});
});

test("every finite number reads back", () => {
	fc.assert(
		fc.property(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
			const parsed = parseNumber(String(value));
			expect(parsed.ok && parsed.value === value).toBe(true);
		}),
		{ seed: 754 },
	);
});

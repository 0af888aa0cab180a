import fc from "fast-check";
import { expect, test } from "vitest";
import { formatLength, parseLength } from "./length.js";

// Inch and foot: international yard and pound agreement of 1959, exactly 25.4 mm and 304.8 mm.
test.each([
	["1.2 m", 1.2],
	["1.2", 1.2],
	["850 mm", 0.85],
	["85cm", 0.85],
	["47 in", 1.1938],
	["4 ft", 1.2192],
	["0", 0],
	[".5 m", 0.5],
])("%s is %f m", (text, metres) => {
	expect(parseLength(text)).toEqual({ ok: true, value: metres });
});

test.each(["", "m", "1,2 m", "1.2 M", "4 yd", "-1 m", "850", "1 2 m", "1e999 m", "1.2 m m", "toString"])(
	"%s is refused with what would be right",
	(text) => {
		const parsed = parseLength(text);
		expect(parsed.ok ? parsed.value : parsed.wanted).toMatch(/m/);
		expect(parsed.ok).toBe(false);
	},
);

test("any length reads back as written, to the last bit", () => {
	fc.assert(
		fc.property(fc.double({ min: 0, max: 100, noNaN: true }), (metres) => {
			expect(parseLength(formatLength(metres))).toEqual({ ok: true, value: metres });
		}),
		{ seed: 254 },
	);
});

test("any text is a length of a car's wire or refused", () => {
	fc.assert(
		fc.property(fc.string(), (text) => {
			const parsed = parseLength(text);
			if (parsed.ok) expect(parsed.value >= 0 && parsed.value <= 100).toBe(true);
			else expect(parsed.wanted).not.toBe("");
		}),
		{ seed: 254 },
	);
});

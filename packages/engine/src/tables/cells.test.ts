import fc from "fast-check";
import { expect, test } from "vitest";
import { formatSettings, parseList, parseSettings } from "./cells.js";

test("lists", () => {
	expect(parseList(" wet; no joints ;;")).toEqual(["wet", "no joints"]);
	expect(parseList("")).toEqual([]);
});

test("settings", () => {
	expect(parseSettings("ohms=12; hot_ohms = 40")).toEqual({ ok: true, value: { ohms: 12, hot_ohms: 40 } });
	expect(parseSettings(" ")).toEqual({ ok: true, value: {} });
});

test.each([
	["ohms", '"ohms" is not a setting'],
	["ohms=12 k", 'in "ohms=12 k", "12 k" is not a number'],
	["ohms=0,5", 'in "ohms=0,5", "0,5" has a decimal comma'],
	["ohms=1; ohms=2", '"ohms" is set twice'],
	["=3", '"=3" is not a setting'],
	["__proto__=3", '"__proto__=3" is not a setting'],
])("%s is refused", (text, problem) => {
	expect(parseSettings(text)).toMatchObject({ ok: false, problem });
});

test("settings read back as written", () => {
	const name = fc.constantFrom("ohms", "volts", "beta", "ohms_25", "constructor");
	const value = fc.double({ noNaN: true, noDefaultInfinity: true }).map((v) => v + 0 || 0);
	fc.assert(
		fc.property(fc.dictionary(name, value, { noNullPrototype: true }), (settings) => {
			expect(parseSettings(formatSettings(settings))).toEqual({ ok: true, value: settings });
		}),
		{ seed: 12 },
	);
});

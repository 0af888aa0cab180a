import { expect, test } from "vitest";
import { amount, count, duration, figures, percent } from "./words.js";

test("amounts have three figures and the prefix a meter would show", () => {
	expect(amount(12.4321, "V")).toBe("12.4 V");
	expect(amount(-0.0352, "V")).toBe("-35.2 mV");
	expect(amount(47_000, "ohm")).toBe("47.0 kΩ");
	expect(amount(0.0321, "ohm")).toBe("0.032 Ω");
	expect(amount(2_200_000, "ohm")).toBe("2.20 MΩ");
	expect(amount(0.0000042, "A")).toBe("4.20 µA");
	expect(amount(0, "A")).toBe("0 A");
});

test("small numbers are not written as minus nothing or with an exponent", () => {
	expect(figures(-1e-9)).toBe("0");
	expect(figures(123456)).toBe("123456");
});

test("time, counts and shares read as people say them", () => {
	expect([12, 60, 85.4].map(duration)).toEqual(["12 min", "1 h", "1 h 25 min"]);
	expect([count(1, "wire"), count(0, "wire"), count(2, "entry", "entries")]).toEqual([
		"1 wire",
		"0 wires",
		"2 entries",
	]);
	expect([0, 0.00001, 0.034, 0.62, 0.9999, 1].map(percent)).toEqual([
		"0.0 %",
		"< 0.1 %",
		"3.4 %",
		"62 %",
		"> 99.9 %",
		"100 %",
	]);
});

import { describe, expect, test } from "vitest";
import { LEAST_OPEN, limits, type SoundReading, told } from "./detect.js";

const reading = (value: number, deviation: number): SoundReading => ({
	value,
	deviation,
	...limits(value, deviation),
});

describe("pass limits", () => {
	// 10 ohm, deviation 0.2, meter 0.8 % and 0.1 ohm: 10 +- (0.4 + 0.08 + 0.1).
	test("two deviations and the meter's limit", () => {
		expect(limits(10, 0.2).low).toBeCloseTo(9.42, 12);
		expect(limits(10, 0.2).high).toBeCloseTo(10.58, 12);
	});

	test("never below nothing; an open reading is open from two megohms on", () => {
		expect(limits(0.02, 0.001).low).toBe(0);
		expect(limits(Number.NaN, 0)).toEqual({ low: LEAST_OPEN, high: Number.POSITIVE_INFINITY });
	});
});

describe("told from the sound reading", () => {
	// Sound up to 10.58; a faulty 11.17 scatters down to 11.17 - 0.4 - 0.18936 = 10.58064. Sound from 9.42 on; a faulty
	// 8.84 scatters up to 8.84 + 0.4 + 0.17072 = 9.41072.
	test("where the two bands no longer overlap", () => {
		expect(told(reading(10, 0.2), 11.17, true)).toBe(true);
		expect(told(reading(10, 0.2), 11.16, true)).toBe(false);
		expect(told(reading(10, 0.2), 8.84, true)).toBe(true);
		expect(told(reading(10, 0.2), 8.86, true)).toBe(false);
	});

	// By another way 11.17 scatters as the sound 10 does, by 2 %: 11.17 - 0.4468 - 0.18936 = 10.534; from 11.23 on it
	// is clear: 11.23 - 0.4492 - 0.18984 = 10.591.
	test("by another way the deviation grows with the value, but never shrinks", () => {
		expect(told(reading(10, 0.2), 11.17, false)).toBe(false);
		expect(told(reading(10, 0.2), 11.23, false)).toBe(true);
		expect(told(reading(10, 0.2), 8.84, false)).toBe(true);
		expect(told(reading(10, 0.2), 8.86, false)).toBe(false);
	});

	test("open against a number, either way", () => {
		expect(told(reading(10, 0.2), Number.NaN, true)).toBe(true);
		expect(told(reading(10, 0.2), 5e7, true)).toBe(true);
		expect(told(reading(Number.NaN, 0), 0.05, true)).toBe(true);
		expect(told(reading(Number.NaN, 0), Number.NaN, true)).toBe(false);
		// So many ohms are damp and fingers as likely as a fault.
		expect(told(reading(Number.NaN, 0), 1e6, true)).toBe(false);
	});
});

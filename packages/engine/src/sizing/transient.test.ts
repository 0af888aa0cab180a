import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { ratedAmps, wireRise } from "../units/index.js";
import { reference } from "../units/reference.test-helper.js";
import { COPPER_HEAT, celsiusAfter } from "./transient.js";

const row = (item: string) => Number(reference("copper-heat").find((r) => r.item!.startsWith(item))!.value);

// Source: IEC 60364-5-54 k of copper, reference/electrical/copper-heat.csv: I^2 t = (k A)^2 takes it from the one
// temperature to the other when nothing is given off. The published figures are rounded to whole numbers.
describe.each([
	["k of copper, PVC", 70, 160],
	["k of copper, XLPE", 90, 250],
])("%s, %d to %d degrees C", (item, from, to) => {
	it.each([0.5, 2.5, 16])("%d mm2", (mm2) => {
		const seconds = 1e-3;
		const amps = (row(item) * mm2) / Math.sqrt(seconds);
		expect(Math.abs((celsiusAfter(mm2, amps, seconds, from) - from) / (to - from) - 1)).toBeLessThan(0.01);
	});
});

it("the heat of copper is that of the table", () => {
	expect(COPPER_HEAT).toBe(row("volumetric"));
});

it("after long it stands at the steady temperature of the law of heat", () => {
	fc.assert(
		fc.property(
			fc.double({ min: 0.2, max: 70, noNaN: true }),
			fc.double({ min: 0.1, max: 1.5, noNaN: true }),
			(mm2, share) => {
				const rated = ratedAmps(mm2);
				const celsius = celsiusAfter(mm2, share * rated, 1e6, 30);
				expect(celsius).toBeCloseTo(30 + wireRise(share * rated, rated, celsius), 6);
			},
		),
		{ seed: 60949 },
	);
});

it("longer and more are never cooler", () => {
	const amps = fc.double({ min: 1, max: 200, noNaN: true });
	fc.assert(
		fc.property(amps, amps, fc.double({ min: 0.01, max: 600, noNaN: true }), (i, more, seconds) => {
			expect(celsiusAfter(1, i, 2 * seconds, 40)).toBeGreaterThanOrEqual(celsiusAfter(1, i, seconds, 40));
			expect(celsiusAfter(1, i + more, seconds, 40)).toBeGreaterThan(celsiusAfter(1, i, seconds, 40));
		}),
		{ seed: 60949 },
	);
});

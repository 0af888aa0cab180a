import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bundleShare, INSULATION_CELSIUS, RATED, ratedAmps, wireRise } from "./ampacity.js";
import { temperatureFactor } from "./conductor.js";
import { reference } from "./reference.test-helper.js";
import { awgMm2 } from "./size.js";

const gauge = (awg: string) => (awg.includes("/") ? 1 - Number(awg.split("/")[0]) : Number(awg));

/** Amperes that hold a conductor at `celsius` in air of `air`. */
const ampsAt = (rated: number, celsius: number, air: number) =>
	rated * Math.sqrt((celsius - air) / wireRise(rated, rated, celsius));

describe.each(reference("ampacity-free-air"))("$awg AWG in free air", (row) => {
	const mm2 = awgMm2(gauge(row.awg!));

	it("rated at 90 degrees C as published", () => {
		expect(ratedAmps(mm2) / Number(row.amps_90C)).toBeCloseTo(1, 12);
	});

	// The table's other columns are not used: they check the law of heat. The worst is 14 AWG.
	it.each([
		[60, row.amps_60C],
		[75, row.amps_75C],
	])("at %d degrees C: %s A", (celsius, published) => {
		if (!published) return;
		const amps = ampsAt(ratedAmps(mm2), celsius, RATED.air);
		expect(Math.abs(amps / Number(published) - 1)).toBeLessThan(0.05);
	});
});

// Source: FAA AC 43.13-1B p. 11-27, vdrop-examples.csv V10 and V11: 14 AWG in free air, 200 degrees C in air of 50.
const example = (id: string) => {
	const row = reference("vdrop-examples").find((r) => r.id === id)!;
	return { published: row.published!, inputs: JSON.parse(row.inputs!) as Record<string, number> };
};

it("V10's free-air current at a far higher temperature, out of another table than ours", () => {
	const { free_air_A, conductor_rating_C, ambient_C, size } = example("V10").inputs;
	const amps = ampsAt(ratedAmps(awgMm2(size!)), conductor_rating_C!, ambient_C!);
	expect(Math.abs(amps / free_air_A! - 1)).toBeLessThan(0.03);
});

it("V11, V10: derated by altitude and bundle", () => {
	const { inputs, published } = example("V10");
	const high = inputs.free_air_A! * inputs.altitude_factor!;
	expect(high).toBeCloseTo(Number(example("V11").published), 2);
	// The same rise from the derated current among the others as from the whole in free air.
	const rated = ratedAmps(awgMm2(inputs.size!));
	const alone = ampsAt(rated, inputs.conductor_rating_C!, inputs.ambient_C!);
	const derated = ampsAt(
		rated * inputs.altitude_factor! * inputs.bundle_factor!,
		inputs.conductor_rating_C!,
		inputs.ambient_C!,
	);
	expect((derated / alone) * inputs.free_air_A!).toBeCloseTo(25.662, 3);
	expect(Math.round(derated)).toBe(Number(published));
});

// Source: FAA AC 43.13-1B table 11-9, ampacity-bundle.csv. Its currents are for a harness loaded to a fifth at
// 60000 ft, ours for all wires loaded at sea level, so this is a comparison of two ways, not an identity.
const bundled = reference("ampacity-bundle").map(({ wire_size, amps_105C }) => {
	const size = wire_size!.startsWith("0") ? 1 - wire_size!.length : Number(wire_size);
	const rated = ratedAmps(awgMm2(size)) * bundleShare(size >= 10 ? 33 : 9);
	return { size, published: Number(amps_105C), ratio: ampsAt(rated, 105, 70) / Number(amps_105C) };
});

it.each(bundled)("$size AWG in a bundle: $published A at 105 degrees C in air of 70", ({ size, ratio }) => {
	// Sizes under the free-air table go on along its last line: on the careful side.
	expect(ratio).toBeGreaterThan(size > 20 ? 0.7 : 0.88);
	expect(ratio).toBeLessThan(size > 20 ? 1 : 1.12);
});

it("thicker carries more, more current or fuller bundles heat more", () => {
	const sizes = fc.double({ min: 0.05, max: 200, noNaN: true });
	const currents = fc.double({ min: 0, max: 200, noNaN: true });
	fc.assert(
		fc.property(sizes, currents, fc.nat({ max: 80 }), (mm2, amps, wires) => {
			const rated = ratedAmps(mm2);
			expect(ratedAmps(mm2 * 1.05)).toBeGreaterThan(rated);
			// A thicker wire has less surface for its metal: its current density falls.
			expect(ratedAmps(mm2 * 1.05) / 1.05).toBeLessThan(rated);
			expect(wireRise(amps + 0.1, rated, 50)).toBeGreaterThan(wireRise(amps, rated, 50));
			expect(bundleShare(wires + 1)).toBeLessThanOrEqual(bundleShare(wires));
			const watts = (a: number, celsius: number) => a ** 2 * temperatureFactor(celsius);
			const share = watts(amps, 50) / watts(rated, RATED.conductor);
			expect(wireRise(amps, rated, 50)).toBeCloseTo(60 * share, 9);
		}),
		{ seed: 6722 },
	);
	expect(INSULATION_CELSIUS.A).toBeLessThan(INSULATION_CELSIUS.B);
});

import fc from "fast-check";
import { expect, it } from "vitest";
import { heatWires } from "../../circuit/index.js";
import { ratedAmps } from "../../units/index.js";
import { reference } from "../../units/reference.test-helper.js";
import { awgMm2 } from "../../units/size.js";
import { battery, benchCircuit, grounded, part, wire } from "./bench-loom.test-helper.js";
import { COOL_DENSITY, LASTING_CELSIUS, steadyCelsius } from "./heat.js";

// Source: reference/electrical/ampacity-free-air.csv, rated at 90 degrees C in air of 30.
it.each(reference("ampacity-free-air"))("$awg AWG at $amps_90C A stands at 90 degrees C", (row) => {
	const gauge = row.awg!.includes("/") ? 1 - Number(row.awg!.split("/")[0]) : Number(row.awg);
	expect(steadyCelsius(awgMm2(gauge), Number(row.amps_90C), 1, 30)).toBeCloseTo(90, 3);
});

it("the limit is that of the table", () => {
	expect(LASTING_CELSIUS).toBe(Number(reference("insulation-limits")[0]!.celsius));
});

// The other way to the same number: the whole network solved with its wires warm.
it("as the network solved warm has it", () => {
	const circuit = benchCircuit({
		parts: [battery, part("H", "heater", ["a", "b"], { values: { ohms: 1 } })],
		wires: [...grounded, wire("W1", "BAT.+ > H.a", 1, 1), wire("W2", "H.b > G1", 1.5, 1)],
	});
	const heated = heatWires(circuit, "rest", { ambientCelsius: 40 });
	for (const [id, mm2] of [
		["W1", 1],
		["W2", 1.5],
	] as const)
		expect(steadyCelsius(mm2, Math.abs(heated.amps.get(id)!), 1)).toBeCloseTo(heated.celsius.get(id)!, 2);
});

it("more neighbours never cool it; far over its rated current it burns", () => {
	fc.assert(
		fc.property(
			fc.double({ min: 0.2, max: 50, noNaN: true }),
			fc.integer({ min: 1, max: 40 }),
			(mm2, loaded) => {
				const amps = ratedAmps(mm2) / 3;
				expect(steadyCelsius(mm2, amps, loaded + 1)).toBeGreaterThanOrEqual(steadyCelsius(mm2, amps, loaded));
				expect(steadyCelsius(mm2, 9 * amps, loaded)).toBe(Number.POSITIVE_INFINITY);
			},
		),
		{ seed: 6722 },
	);
});

it("below the density that is not looked up no wire up to 120 mm2 is loaded, nor warm in the fullest bundle", () => {
	for (const mm2 of [0.05, 0.35, 2.5, 16, 50, 120]) {
		expect(COOL_DENSITY * mm2).toBeLessThan(0.1 * ratedAmps(mm2));
		expect(steadyCelsius(mm2, COOL_DENSITY * mm2, 100)).toBeLessThan(LASTING_CELSIUS);
	}
});

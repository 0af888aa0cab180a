import { expect, test } from "vitest";
import { hotWire } from "./hot-wire.js";
import { battery, benchCircuit, grounded, part, wire } from "./support/bench-loom.test-helper.js";

const car = (mm2: number, heaters = 1) =>
	benchCircuit({
		parts: [
			battery,
			...Array.from({ length: heaters }, (_, k) =>
				part(`H${k}`, "heater", ["a", "b"], { values: { ohms: 0.8 } }),
			),
		],
		wires: [
			...grounded,
			...Array.from({ length: heaters }, (_, k) => [
				wire(`A${k}`, `BAT.+ > H${k}.a`, mm2, 1, { bundle: "floor" }),
				wire(`B${k}`, `H${k}.b > G1`, mm2, 1, { bundle: "floor" }),
			]).flat(),
		],
	});

// reference/electrical/ampacity-free-air.csv: 14 AWG (2.08 mm2) comes from 30 to 90 degrees C at 35 A, so at 15 A
// it warms by some 11 K; 0.35 mm2 is rated for some 9 A and warms by far more than 60 K.
test("15 A warm a wire of 2.5 mm2 little and burn one of 0.35 mm2", () => {
	expect(hotWire.check(car(2.5))).toEqual([]);
	const found = hotWire.check(car(0.35));
	expect(found.map(({ path }) => path)).toEqual([
		["BAT.+", "A0", "H0.a"],
		["H0.b", "B0", "G1"],
	]);
	expect(found[0]).toMatchObject({ rule: "hot-wire", severity: "stop" });
});

test("what a wire stands alone it does not stand in a full bundle", () => {
	expect(hotWire.check(car(1))).toEqual([]);
	expect(hotWire.check(car(1, 5)).length).toBeGreaterThan(0);
});

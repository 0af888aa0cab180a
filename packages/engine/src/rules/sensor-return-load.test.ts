import { expect, test } from "vitest";
import { sensorReturnLoad } from "./sensor-return-load.js";
import {
	battery,
	benchCircuit,
	grounded,
	joint,
	part,
	unit,
	wire,
} from "./support/bench-loom.test-helper.js";

const ecu = unit("ECU", "control unit", { 1: "supply", 2: "ground", 3: "sensor return", 4: "input pull-up" });

const car = (lampGround: string, more: readonly string[] = [], groundMm2 = 4) =>
	benchCircuit({
		parts: [
			battery,
			ecu,
			part("T1", "thermistor", ["a", "b"]),
			part("E1", "lamp", ["a", "b"], { values: { watts: 5 } }),
		],
		joints: [joint("G1", "ground"), joint("S1")],
		wires: [
			...grounded,
			wire("W1", "BAT.+ > ECU.1", 4),
			wire("W2", "ECU.2 > G1", groundMm2),
			...["ECU.4 > T1.a", "T1.b > S1", "S1 > ECU.3", "BAT.+ > E1.a", `E1.b > ${lampGround}`, ...more].map(
				(run, k) => wire(`L${k + 1}`, run, 0.5),
			),
		],
	});

test("a lamp with a ground of its own leaves the return alone", () => {
	expect(sensorReturnLoad.check(car("G1"))).toEqual([]);
});

test("a lamp grounded on the sensor return", () => {
	const [found, ...more] = sensorReturnLoad.check(car("S1"));
	expect(more).toEqual([]);
	expect(found).toMatchObject({ rule: "sensor-return-load", severity: "warn" });
	expect(found!.why).toMatch(/0\.3\d+ A flows into it/);
	expect(found!.path).toEqual(["BAT.+", "L4", "E1.a", "E1", "E1.b", "L5", "S1", "L3", "ECU.3", "ECU"]);
});

test("a return tied to the body beside a thin unit ground takes the unit's own current", () => {
	const [found] = sensorReturnLoad.check(car("G1", ["S1 > G1"], 0.1));
	expect(found!.why).toContain("leave by it");
});

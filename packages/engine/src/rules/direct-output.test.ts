import { expect, test } from "vitest";
import { directOutput } from "./direct-output.js";
import { battery, benchCircuit, grounded, part, unit, wire } from "./support/bench-loom.test-helper.js";

const car = (...runs: string[]) =>
	benchCircuit({
		parts: [
			battery,
			unit("ECU", "control unit", { 1: "supply", 2: "ground", 3: "low-side", 4: "high-side", 5: "bridge" }),
			part("Y1", "coil", ["a", "b"], { values: { ohms: 12 } }),
		],
		wires: [
			...grounded,
			wire("W1", "BAT.+ > ECU.1"),
			wire("W2", "ECU.2 > G1"),
			...runs.map((run, k) => wire(`L${k}`, run)),
		],
	});

test("outputs with a load between pass", () => {
	expect(directOutput.check(car("BAT.+ > Y1.a", "Y1.b > ECU.3"))).toEqual([]);
	expect(directOutput.check(car("ECU.4 > Y1.a", "Y1.b > G1"))).toEqual([]);
	expect(directOutput.check(car("ECU.4 > BAT.+", "ECU.3 > G1"))).toEqual([]);
});

test.each([
	["BAT.+ > ECU.3", "ECU.3", "the battery's feed"],
	["ECU.4 > G1", "ECU.4", "a ground of the car"],
	["ECU.5 > G1", "ECU.5", "a ground of the car"],
	["BAT.+ > ECU.5", "ECU.5", "the battery's feed"],
])("%s is a short when the unit switches", (run, pin, what) => {
	const [found, ...more] = directOutput.check(car(run));
	expect(more).toEqual([]);
	expect(found).toMatchObject({ rule: "direct-output", severity: "stop" });
	expect(found!.where).toContain(pin);
	expect(found!.why).toContain(what);
	expect(found!.path).toContain("L0");
});

import { expect, test } from "vitest";
import { mixedGround } from "./mixed-ground.js";
import {
	battery,
	benchCircuit,
	grounded,
	joint,
	part,
	unit,
	wire,
} from "./support/bench-loom.test-helper.js";

const car = (...runs: string[]) =>
	benchCircuit({
		parts: [
			battery,
			unit("ECU", "control unit", { 1: "supply", 2: "ground", 4: "sensor return", 5: "input pull-up" }),
			part("B1", "thermistor", ["a", "b"]),
			part("E1", "lamp", ["a", "b"], { values: { watts: 5 } }),
		],
		joints: [joint("G1", "ground"), joint("S1")],
		wires: [
			...grounded,
			wire("W1", "BAT.+ > ECU.1"),
			wire("W2", "ECU.2 > G1"),
			wire("W3", "ECU.5 > B1.a"),
			wire("W4", "B1.b > S1"),
			wire("W5", "S1 > ECU.4"),
			wire("W6", "BAT.+ > E1.a"),
			...runs.map((run, k) => wire(`L${k}`, run)),
		],
	});

test("the return alone on the unit's return pin, the lamp on the body", () => {
	expect(mixedGround.check(car("E1.b > G1"))).toEqual([]);
});

test("the return joined to a ground point", () => {
	const [found, ...more] = mixedGround.check(car("E1.b > G1", "S1 > G1"));
	expect(more).toEqual([]);
	expect(found).toMatchObject({ rule: "mixed-ground", severity: "warn" });
	expect(found!.where).toContain("joined to ground point G1");
	expect(found!.path).toEqual(["ECU.4", "W5", "S1", "L1", "G1", "ECU"]);
});

test("a lamp grounded at the return", () => {
	const [found, ...more] = mixedGround.check(car("E1.b > S1"));
	expect(more).toEqual([]);
	expect(found!.where).toContain("E1");
	expect(found!.path[0]).toBe("E1");
});

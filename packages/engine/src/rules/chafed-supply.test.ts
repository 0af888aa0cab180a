import { expect, test } from "vitest";
import { chafedSupply } from "./chafed-supply.js";
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
			unit("ECU", "control unit", { 1: "supply", 2: "ground", 3: "sensor supply", 4: "sensor return" }),
			part("B1", "potentiometer", ["supply", "return", "signal"]),
		],
		joints: [joint("G1", "ground"), joint("S1")],
		wires: [
			...grounded,
			wire("W1", "BAT.+ > ECU.1"),
			wire("W2", "ECU.2 > G1"),
			wire("W3", "ECU.3 > S1"),
			wire("W4", "S1 > B1.supply"),
			wire("W5", "B1.return > ECU.4"),
			...runs.map((run, k) => wire(`L${k}`, run)),
		],
	});

test("a stowed stub on the sensor supply; one on the return harms less", () => {
	expect(chafedSupply.check(car())).toEqual([]);
	expect(chafedSupply.check(car("ECU.4 > stowed"))).toEqual([]);
	const [found, ...more] = chafedSupply.check(car("S1 > stowed"));
	expect(more).toEqual([]);
	expect(found).toMatchObject({ rule: "chafed-supply", severity: "note", path: ["ECU", "ECU.3", "L0"] });
	expect(found!.why).toContain("B1 goes with it");
});

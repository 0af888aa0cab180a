import { expect, test } from "vitest";
import { groundMetal } from "./ground-metal.js";
import {
	battery,
	benchCircuit,
	grounded,
	joint,
	part,
	unit,
	wire,
} from "./support/bench-loom.test-helper.js";

const car = (ground: string) =>
	benchCircuit({
		parts: [
			battery,
			unit("ECU", "control unit", { 1: "supply", 2: "ground", 5: "input pull-up", 6: "input pull-up" }),
			part("S", "switch", ["1", "2"], { positions: "released:; pressed:1-2" }),
			part("B", "thermistor", ["a", "b"]),
		],
		joints: [
			joint("G1", "ground"),
			joint("G2", "ground"),
			joint("GE", "ground", { metal: "engine" }),
			joint("S1"),
		],
		wires: [
			...grounded,
			wire("W1", "BAT.+ > ECU.1"),
			wire("W2", "ECU.2 > G1"),
			wire("W3", "ECU.5 > S.1"),
			wire("W4", "S.2 > S1"),
			wire("W5", "B.b > S1"),
			wire("W6", "ECU.6 > B.a"),
			wire("W7", `S1 > ${ground}`),
			// A strap from the engine to the body does not make the one the other.
			wire("W8", "GE > G2", 25),
		],
	});

test("a switch and a sensor grounded on the engine, their unit on the body", () => {
	for (const ground of ["G1", "G2", "ECU.2", "cut"])
		expect(groundMetal.check(car(ground), car("G1"))).toEqual([]);
	const found = groundMetal.check(car("GE"), car("G1"));
	expect(found.map(({ path }) => path)).toEqual([
		["ECU", "ECU.5", "S", "S.2", "W4", "S1", "W7", "GE"],
		["ECU", "ECU.6", "B", "B.b", "W5", "S1", "W7", "GE"],
	]);
	expect(found[0]).toMatchObject({ rule: "ground-metal", severity: "warn" });
});

test("a ground that was there as delivered is the maker's", () => {
	expect(groundMetal.check(car("GE"), car("GE"))).toEqual([]);
	expect(groundMetal.check(car("GE"))).toEqual([]);
});

import { expect, test } from "vitest";
import { sneakPath } from "./sneak-path.js";
import { battery, benchCircuit, grounded, joint, part, wire } from "./support/bench-loom.test-helper.js";

// Two lamps in one housing with one ground: where it is lost, the lit lamp's current goes back through the other.
const car = (ground: string) =>
	benchCircuit({
		parts: [
			battery,
			part("S", "switch", ["1", "2"], { positions: "off:; on:1-2" }),
			part("E1", "lamp", ["a", "b"], { values: { watts: 21 } }),
			part("E2", "lamp", ["a", "b"], { values: { watts: 5 } }),
			part("E3", "lamp", ["a", "b"], { values: { watts: 5 } }),
		],
		joints: [joint("G1", "ground"), joint("S1"), joint("S2")],
		conditions: { on: { S: "on" } },
		wires: [
			...grounded,
			wire("W1", "BAT.+ > S.1"),
			wire("W2", "S.2 > E1.a"),
			wire("W3", "E1.b > S1"),
			wire("W4", "E2.b > S1"),
			wire("W5", "E2.a > S2"),
			wire("W6", "S2 > E3.a"),
			wire("W7", "E3.b > G1"),
			wire("W8", `S1 > ${ground}`),
		],
	});

test("a shared ground that is lost sends the current back through the other lamps", () => {
	expect(sneakPath.check(car("G1"))).toEqual([]);
	const found = sneakPath.check(car("cut"));
	expect(found.length).toBeGreaterThan(0);
	expect(found[0]).toMatchObject({ rule: "sneak-path", severity: "warn" });
	expect(found[0]!.path).toEqual(expect.arrayContaining(["E1", "S1", "E2", "E3", "G1"]));
});

test("a resistor in series is meant", () => {
	const circuit = benchCircuit({
		parts: [
			battery,
			part("R1", "resistor", ["a", "b"], { values: { ohms: 2 } }),
			part("M1", "motor", ["a", "b"], { values: { ohms: 1 } }),
		],
		wires: [...grounded, wire("W1", "BAT.+ > R1.a"), wire("W2", "R1.b > M1.a"), wire("W3", "M1.b > G1")],
	});
	expect(sneakPath.check(circuit)).toEqual([]);
});

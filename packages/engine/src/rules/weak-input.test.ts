import { expect, test } from "vitest";
import { battery, benchCircuit, grounded, part, unit, wire } from "./support/bench-loom.test-helper.js";
import { weakInput } from "./weak-input.js";

// Pull-up 2200 ohm to 5 V: 1500 ohm in series with the switch leave 5 x 1500 / 3700 = 2.03 V, less what the lifted ground takes.
const car = (ohms: number) =>
	benchCircuit({
		parts: [
			battery,
			unit("ECU", "control unit", { 1: "supply", 2: "ground", 5: "input pull-up" }),
			part("S", "switch", ["1", "2"], { positions: "released:; pressed:1-2" }),
			part("R", "resistor", ["a", "b"], { values: { ohms } }),
		],
		conditions: { released: {}, pressed: { S: "pressed" } },
		wires: [
			...grounded,
			wire("W1", "BAT.+ > ECU.1"),
			wire("W2", "ECU.2 > G1"),
			wire("W3", "ECU.5 > S.1"),
			wire("W4", "S.2 > R.a"),
			wire("W5", "R.b > G1"),
		],
	});

test("a switch that pulls its input only halfway", () => {
	expect(weakInput.check(car(100))).toEqual([]);
	const [found, ...more] = weakInput.check(car(1500));
	expect(more).toEqual([]);
	expect(found).toMatchObject({ rule: "weak-input", severity: "warn", path: ["ECU", "ECU.5", "S"] });
	expect(found!.why).toContain("With S in pressed ('pressed') the input stands at 2.02 V");
});

import { expect, test } from "vitest";
import { brakeLamps } from "./brake-lamps.js";
import { battery, benchCircuit, grounded, part, wire } from "./support/bench-loom.test-helper.js";

const car = (positions: string, ground = "E1.b > G1") =>
	benchCircuit({
		parts: [
			battery,
			part("S-BRK", "switch", ["1", "2", "3", "4"], { positions, duty: "brake switch" }),
			part("E1", "lamp", ["a", "b"], { values: { watts: 21 }, duty: "brake lamp" }),
		],
		wires: [...grounded, wire("W1", "BAT.+ > S-BRK.1"), wire("W2", "S-BRK.2 > E1.a"), wire("W3", ground)],
	});

test("a brake lamp on the contact that closes with the pedal", () => {
	expect(brakeLamps.check(car("released:3-4; pressed:1-2"))).toEqual([]);
});

test("a lamp on the wrong contact is dark when braking and lit when not", () => {
	const found = brakeLamps.check(car("released:1-2; pressed:3-4"));
	expect(found.map((f) => f.why)).toEqual([
		expect.stringContaining("too little to light"),
		expect.stringContaining("must be dark"),
	]);
	expect(found[0]!.cautions.join()).toContain("Brake circuit");
});

test("a lamp without its ground is found", () => {
	expect(brakeLamps.check(car("released:3-4; pressed:1-2", "E1.b > stowed"))).toHaveLength(1);
});

test("a switch without a position named for the pedal is said", () => {
	expect(brakeLamps.check(car("up:; floor:1-2"))[0]!.mend).toBe("Name the position one of: pressed, down.");
});

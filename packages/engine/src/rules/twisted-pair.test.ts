import { expect, test } from "vitest";
import { battery, benchCircuit, joint, part, wire } from "./support/bench-loom.test-helper.js";
import { twistedPair } from "./twisted-pair.js";

const car = (pair: string, metres: number) =>
	benchCircuit({
		parts: [battery, part("R", "bus end", ["high", "low"])],
		joints: [joint("S1"), joint("S2"), joint("G1", "ground")],
		wires: [
			wire("W1", "S1 > stowed", 0.5, 1, { pair: "TP1" }),
			wire("W2", "S2 > stowed", 0.5, 1, { pair: "TP1" }),
			wire("W3", "S1 > R.high", 0.5, metres, { pair }),
			wire("W4", "S2 > R.low", 0.5, metres, { pair }),
		],
	});

test("a pair carried on as a pair, or by a very short piece, is right; a plain wire is not", () => {
	expect(twistedPair.check(car("TP2", 1))).toEqual([]);
	expect(twistedPair.check(car("", 0.04))).toEqual([]);
	const found = twistedPair.check(car("", 0.3));
	expect(found.map((f) => f.path)).toEqual([
		["W1", "S1", "W3"],
		["W2", "S2", "W4"],
	]);
});

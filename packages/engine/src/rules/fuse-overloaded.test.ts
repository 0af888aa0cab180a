import { expect, test } from "vitest";
import { reference } from "../units/reference.test-helper.js";
import { fuseOverloaded, LASTING_SHARE } from "./fuse-overloaded.js";
import { battery, benchCircuit, grounded, part, wire } from "./support/bench-loom.test-helper.js";

// 12.6 V over 1.26 ohm: 10 A, less a little for the wires.
const car = (amps: number) =>
	benchCircuit({
		parts: [
			battery,
			part("F1", "fuse", ["in", "out"], { values: { amps } }),
			part("H1", "heater", ["a", "b"], { values: { ohms: 1.26 } }),
		],
		wires: [
			...grounded,
			wire("W1", "BAT.+ > F1.in", 6),
			wire("W2", "F1.out > H1.a", 6),
			wire("W3", "H1.b > G1", 6),
		],
	});

test("10 A through 15 A passes, through 12.5 A ages the fuse, through 7.5 A blows it", () => {
	expect(fuseOverloaded.check(car(15))).toEqual([]);
	expect(fuseOverloaded.check(car(12.5))).toMatchObject([{ severity: "note", rule: "fuse-overloaded" }]);
	const [found, ...more] = fuseOverloaded.check(car(7.5));
	expect(more).toEqual([]);
	expect(found).toMatchObject({ severity: "stop" });
	expect(found!.path.slice(0, 4)).toEqual(["F1", "F1.out", "W2", "H1.a"]);
});

// Source: reference/electrical/fuse-wire-rules.csv R5.
test("the share is that of the reference table", () => {
	expect(LASTING_SHARE).toBe(Number(reference("fuse-wire-rules").find((row) => row.rule === "R5")!.value));
});

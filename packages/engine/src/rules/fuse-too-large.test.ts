import { expect, test } from "vitest";
import { fuseTooLarge } from "./fuse-too-large.js";
import { battery, benchCircuit, grounded, joint, part, wire } from "./support/bench-loom.test-helper.js";

const lamp = part("E1", "lamp", ["a", "b"], { values: { watts: 21 } });
const fuse = (id: string, amps: number) => part(id, "fuse", ["in", "out"], { values: { amps } });
const key = part("KEY", "switch", ["30", "15"], { positions: "off:; run:30-15" });

function car(amps: number, second: number, side: readonly [string, string] = ["in", "out"]) {
	return benchCircuit({
		parts: [battery, fuse("F1", amps), fuse("F2", second), key, lamp],
		joints: [joint("G1", "ground"), joint("S1")],
		wires: [
			...grounded,
			wire("W1", `BAT.+ > F1.${side[0]}`, 6),
			wire("W2", `F1.${side[1]} > S1`, 2.5),
			wire("W3", "S1 > KEY.30", 1),
			wire("W4", "KEY.15 > F2.in", 1),
			wire("W5", "F2.out > E1.a", 0.5),
			wire("W6", "E1.b > G1", 0.35),
		],
	});
}

test("sizes that fit pass: 15 A over 1 mm2, 10 A over 0.5 mm2; ground wires do not count", () => {
	expect(fuseTooLarge.check(car(15, 10))).toEqual([]);
});

test("the thinnest wire counts, through an open switch and up to the next fuse", () => {
	const [found, ...more] = fuseTooLarge.check(car(30, 10));
	expect(more).toEqual([]);
	expect(found).toMatchObject({ rule: "fuse-too-large", severity: "stop" });
	expect(found!.where).toContain("wire W3 (1 mm2) behind it");
	expect(found!.path).toEqual(["F1", "F1.out", "W2", "S1", "W3"]);
	expect(found!.mend).toContain("15 A");
	expect(found!.mend).toContain("2.5 mm2");
});

test("behind the last fuse only its own wire counts", () => {
	const [found, ...more] = fuseTooLarge.check(car(15, 15));
	expect(more).toEqual([]);
	expect(found!.where).toContain("wire W5");
});

test("a fuse may be wired either way round", () => {
	expect(fuseTooLarge.check(car(30, 10, ["out", "in"]))).toHaveLength(1);
});

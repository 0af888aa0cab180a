import { expect, test } from "vitest";
import { noJoints } from "./no-joints.js";
import { battery, benchCircuit, joint, part, wire } from "./support/bench-loom.test-helper.js";

const car = (mark: string, to: string) =>
	benchCircuit({
		parts: [battery, part("K1", "coil sensor", ["a", "b"], { values: { ohms: 900 } })],
		joints: [joint("S1"), joint("G1", "ground")],
		wires: [wire("W1", `K1.a > ${to}`, 0.5, 1, { marks: mark === "" ? [] : [mark] })],
	});

test("a marked wire must not end in a splice; a ground point is none", () => {
	expect(noJoints.check(car("no joints", "G1"))).toEqual([]);
	expect(noJoints.check(car("", "S1"))).toEqual([]);
	expect(noJoints.check(car("no joints", "S1"))[0]).toMatchObject({ severity: "stop", path: ["W1", "S1"] });
	const [restraint] = noJoints.check(car("pyrotechnic", "S1"));
	expect(restraint!.mend).toContain("maker's procedure");
	expect(restraint!.cautions.join()).toContain("never measure");
});

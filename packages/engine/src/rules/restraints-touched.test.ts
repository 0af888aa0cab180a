import { expect, test } from "vitest";
import { restraintsTouched } from "./restraints-touched.js";
import {
	battery,
	benchCircuit,
	grounded,
	joint,
	part,
	unit,
	wire,
} from "./support/bench-loom.test-helper.js";

const marks = ["pyrotechnic"];
const car = (more: readonly string[] = [], metres = 1, igniter = true) =>
	benchCircuit({
		parts: [
			battery,
			unit("RCU", "control unit", { 1: "supply", 2: "ground", 3: "high-side", 4: "low-side" }, { marks }),
			...(igniter ? [part("Q1", "igniter", ["a", "b"], { values: { ohms: 2 }, marks })] : []),
			part("E1", "lamp", ["a", "b"], { values: { watts: 5 } }),
		],
		joints: [joint("G1", "ground")],
		wires: [
			...grounded,
			wire("W1", igniter ? "RCU.3 > Q1.a" : "RCU.3 > cut", 0.5, metres, { marks }),
			wire("W2", igniter ? "RCU.4 > Q1.b" : "RCU.4 > cut", 0.5, metres, { marks }),
			...more.map((run, k) => wire(`L${k}`, run)),
		],
	});

test("restraints as delivered pass, whatever else is changed", () => {
	expect(restraintsTouched.check(car(["BAT.+ > E1.a"]), car())).toEqual([]);
});

test.each([
	["a wire shortened", car([], 0.8), "was worked on"],
	["an igniter taken out", car([], 1, false), "was taken out"],
	["a wire on an igniter", car(["Q1.a > E1.a"]), "A new wire ends at Q1.a"],
])("%s", (_, now, why) => {
	const found = restraintsTouched.check(now, car());
	expect(found.map((one) => one.why).join()).toContain(why);
	for (const one of found) {
		expect(one).toMatchObject({ rule: "restraints-touched", severity: "stop" });
		expect(one.mend).toContain("maker's procedure only");
	}
});

test("a load or a ground on an igniter's conductor is seen without the loom as delivered", () => {
	expect(restraintsTouched.check(car())).toEqual([]);
	expect(restraintsTouched.check(car(["Q1.a > E1.a"]))[0]!.why).toContain("E1.a hangs on its conductor");
	expect(restraintsTouched.check(car(["Q1.b > G1"]))[0]!.why).toContain("a ground of the car");
});

import { expect, test } from "vitest";
import { benchCircuit, joint, unit, wire } from "./support/bench-loom.test-helper.js";
import { wetSeal } from "./wet-seal.js";

const car = (marks: readonly string[], splice: readonly string[] = []) =>
	benchCircuit({
		parts: [
			unit("X1", "connector", {}, { marks }),
			unit("B1", "thermistor", { a: "a", b: "b" }, { connector: "X1" }),
		],
		joints: [joint("S1", "splice", { marks: splice })],
		wires: [wire("W0", "B1.a > S1")],
	});

test("an unsealed plug in the wet, and an unsealed splice behind one", () => {
	for (const marks of [["wet"], ["unsealed"], []]) expect(wetSeal.check(car(marks))).toEqual([]);
	expect(wetSeal.check(car([], ["unsealed"]))).toEqual([]);
	expect(wetSeal.check(car(["wet", "unsealed"]))).toMatchObject([{ severity: "warn", path: ["X1", "W0"] }]);
	expect(wetSeal.check(car(["wet"], ["unsealed"]))).toMatchObject([{ path: ["S1", "W0"] }]);
	expect(wetSeal.check(car([], ["wet", "unsealed"]))).toHaveLength(1);
});

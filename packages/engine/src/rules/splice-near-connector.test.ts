import { expect, test } from "vitest";
import { spliceNearConnector } from "./splice-near-connector.js";
import { benchCircuit, connector, joint, part, unit, wire } from "./support/bench-loom.test-helper.js";

const car = (metres: number, from = "B1.a") =>
	benchCircuit({
		parts: [
			connector("X1"),
			unit("B1", "thermistor", { a: "a", b: "b" }, { connector: "X1" }),
			part("R1", "resistor", ["a", "b"], { values: { ohms: 10 } }),
		],
		joints: [joint("S1")],
		wires: [wire("W1", `${from} > S1`, 0.5, metres)],
	});

test("40 mm behind a plug is enough, 30 mm is not; a part without a plug has no seal to pull", () => {
	expect(spliceNearConnector.check(car(0.04))).toEqual([]);
	expect(spliceNearConnector.check(car(0.03, "R1.a"))).toEqual([]);
	const [found, ...more] = spliceNearConnector.check(car(0.03));
	expect(more).toEqual([]);
	expect(found).toMatchObject({ severity: "warn", path: ["S1", "W1", "B1.a"] });
	expect(found!.where).toContain("30 mm");
});

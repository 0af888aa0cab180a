import { expect, test } from "vitest";
import { sensorSupply } from "./sensor-supply.js";
import {
	battery,
	benchCircuit,
	grounded,
	joint,
	part,
	unit,
	wire,
} from "./support/bench-loom.test-helper.js";

const pins = { 1: "supply", 2: "ground", 3: "sensor supply", 4: "sensor return", 5: "input pull-down" };
const roles = ["supply", "return", "signal"];

const check = (runs: readonly string[], kind = "potentiometer", ecuPins: Record<string, string> = pins) =>
	sensorSupply.check(
		benchCircuit({
			parts: [
				battery,
				unit("ECU", "control unit", ecuPins),
				unit("TCU", "control unit", pins),
				part("B1", kind, roles),
			],
			joints: [joint("G1", "ground"), joint("S1")],
			wires: [
				...grounded,
				wire("W1", "B1.signal > ECU.5"),
				wire("W2", "B1.return > ECU.2"),
				...runs.map((run, k) => wire(`L${k + 1}`, run)),
			],
		}),
	);

test("a supply from the unit's own regulator, by a splice, or a switched feed", () => {
	expect(check(["B1.supply > S1", "S1 > ECU.3"])).toEqual([]);
	expect(
		check(["B1.supply > BAT.+"], "hall sensor", { 1: "supply", 2: "ground", 5: "input pull-up" }),
	).toEqual([]);
});

test("a supply that ends in a splice, or comes from another unit", () => {
	const [found, ...more] = check(["B1.supply > S1"]);
	expect(more).toEqual([]);
	expect(found).toMatchObject({
		rule: "sensor-supply",
		severity: "stop",
		path: ["S1", "L1", "B1.supply", "B1"],
	});
	expect(found!.mend).toContain("of ECU");
	expect(check(["B1.supply > TCU.3"])[0]!.why).toContain("comes from TCU.3");
});

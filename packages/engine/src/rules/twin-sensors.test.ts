import { expect, test } from "vitest";
import { Circuit } from "../circuit/index.js";
import type { Monitor } from "../loom/index.js";
import { battery, benchLoom, grounded, joint, part, unit, wire } from "./support/bench-loom.test-helper.js";
import { twinSensors } from "./twin-sensors.js";

const roles = ["supply", "return", "signal"];
const monitor = {
	...{ code: "P2138", unit: "ECU", title: "", measures: "volts", contact: "ECU.5", reference: "" },
	...{ when: "rest", twin: "ECU.6", ratio: 2, of: "", below: -1, above: 1, note: "" },
} as Monitor;

function car(second: string, back: string) {
	const loom = benchLoom({
		parts: [
			battery,
			unit("ECU", "control unit", {
				...{ 1: "supply", 2: "ground", 3: "sensor supply", 4: "sensor supply" },
				...{ 5: "input pull-down", 6: "input pull-down", 7: "sensor return", 8: "sensor return" },
			}),
			part("B1", "potentiometer", roles),
			part("B2", "potentiometer", roles),
		],
		joints: [joint("G1", "ground"), joint("S1"), joint("S2")],
		wires: [
			...grounded,
			wire("W1", "ECU.3 > S1"),
			wire("W2", "S1 > B1.supply"),
			wire("W3", "ECU.7 > S2"),
			wire("W4", "S2 > B1.return"),
			wire("W5", "B1.signal > ECU.5"),
			wire("W6", "B2.signal > ECU.6"),
			wire("W7", `B2.supply > ${second}`),
			wire("W8", `B2.return > ${back}`),
		],
	});
	return new Circuit({ ...loom, monitors: [monitor] });
}

test("twins that come to share what was parted", () => {
	const apart = car("ECU.4", "ECU.8");
	expect(twinSensors.check(apart, apart)).toEqual([]);
	expect(twinSensors.check(car("S1", "S2"), car("S1", "S2"))).toEqual([]);
	expect(twinSensors.check(car("S1", "ECU.8"))).toEqual([]);
	const [found, ...more] = twinSensors.check(car("S1", "ECU.8"), apart);
	expect(more).toEqual([]);
	expect(found).toMatchObject({ rule: "twin-sensors", severity: "warn" });
	expect(found!.why).toContain("share one supply");
	expect(twinSensors.check(car("ECU.4", "S2"), apart)[0]!.why).toContain("share one return");
});

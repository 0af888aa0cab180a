import { expect, test } from "vitest";
import { driverOverLimit } from "./driver-over-limit.js";
import { battery, benchCircuit, grounded, part, unit, wire } from "./support/bench-loom.test-helper.js";

function car(ohms: number, limit = "", role = "low-side") {
	const side = role === "low-side" ? ["BAT.+ > H1.a", "H1.b > ECU.3"] : ["ECU.3 > H1.a", "H1.b > G1"];
	return benchCircuit({
		parts: [
			battery,
			unit("ECU", "control unit", { 1: "supply", 2: "ground", 3: `${role}${limit}` }),
			part("H1", "heater", ["a", "b"], { values: { ohms } }),
		],
		conditions: { off: {}, on: { "ECU.3": "on" } },
		wires: [
			...grounded,
			wire("W1", "BAT.+ > ECU.1", 4),
			wire("W2", "ECU.2 > G1", 4),
			...side.map((run, k) => wire(`L${k}`, run, 2.5)),
		],
	});
}

// 12.6 V over 6 ohm is 2.1 A; a low-side driver is made for 3 A unless its pin says otherwise.
test("a load within the limit, the pin's own limit, and a relay coil's worth too much", () => {
	expect(driverOverLimit.check(car(6))).toEqual([]);
	const [found] = driverOverLimit.check(car(6, "|limit_amps=1.5"));
	expect(found).toMatchObject({ rule: "driver-over-limit", severity: "warn" });
	expect(found!.why).toMatch(/would carry 2\.0\d A in 'on'; it is made for 1\.5 A/);
	expect(found!.path).toEqual(["BAT.+", "L0", "H1.a", "H1", "H1.b", "L1", "ECU.3", "ECU"]);
	expect(driverOverLimit.check(car(3))).toHaveLength(1);
});

test("a high-side driver", () => {
	expect(driverOverLimit.check(car(3, "", "high-side"))).toEqual([]);
	const [found] = driverOverLimit.check(car(1.5, "", "high-side"));
	expect(found!.path.slice(0, 4)).toEqual(["ECU", "ECU.3", "L0", "H1.a"]);
});

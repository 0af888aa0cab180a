import { expect, test } from "vitest";
import { Circuit } from "../circuit/index.js";
import type { Monitor } from "../loom/index.js";
import { codeSet } from "./code-set.js";
import { battery, benchLoom, grounded, part, unit, wire } from "./support/bench-loom.test-helper.js";

const monitor: Monitor = {
	code: "P0118",
	unit: "ECU",
	title: "temperature, high",
	measures: "volts",
	contact: "ECU.5",
	reference: "",
	when: "rest",
	twin: "",
	ratio: 1,
	of: "",
	below: 0.2,
	above: 4.7,
	note: "",
};

function car(back: string) {
	const loom = benchLoom({
		parts: [
			battery,
			unit("ECU", "control unit", { 1: "supply", 2: "ground", 4: "sensor return", 5: "input pull-up" }),
			part("B1", "thermistor", ["a", "b"]),
		],
		wires: [
			...grounded,
			wire("W1", "BAT.+ > ECU.1"),
			wire("W2", "ECU.2 > G1"),
			wire("W3", "ECU.5 > B1.a"),
			wire("W4", `B1.b > ${back}`),
		],
	});
	return new Circuit({ ...loom, monitors: [monitor] });
}

test("a sensor with its return reads inside the window; one without it does not", () => {
	expect(codeSet.check(car("ECU.4"))).toEqual([]);
	const [found, ...more] = codeSet.check(car("stowed"));
	expect(more).toEqual([]);
	expect(found).toMatchObject({ rule: "code-set", severity: "warn" });
	expect(found!.why).toContain("above 4.7 V, and sets P0118 (temperature, high)");
	expect(found!.path.slice(0, 2)).toEqual(["ECU", "ECU.5"]);
});

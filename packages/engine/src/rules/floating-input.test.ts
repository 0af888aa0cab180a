import { expect, test } from "vitest";
import { Circuit } from "../circuit/index.js";
import type { Monitor } from "../loom/index.js";
import { codeSet } from "./code-set.js";
import { floatingInput } from "./floating-input.js";
import { battery, benchLoom, grounded, unit, wire } from "./support/bench-loom.test-helper.js";

const monitor = {
	...{ code: "P0705", unit: "ECU", title: "", measures: "volts", contact: "ECU.5", reference: "" },
	...{ when: "rest", twin: "", ratio: 1, of: "", below: undefined, above: 4.7, note: "" },
} as Monitor;

function car(...runs: string[]) {
	const loom = benchLoom({
		parts: [battery, unit("ECU", "control unit", { 1: "supply", 2: "ground", 5: "input pull-up" })],
		wires: [
			...grounded,
			wire("W1", "BAT.+ > ECU.1"),
			wire("W2", "ECU.2 > G1"),
			...runs.map((run, k) => wire(`L${k}`, run)),
		],
	});
	return new Circuit({ ...loom, monitors: [monitor] });
}

test("an input tied to ground is quiet; one without a wire, or with a stub, sets its code", () => {
	expect(floatingInput.check(car("ECU.5 > G1"))).toEqual([]);
	expect(floatingInput.check(car())[0]!.why).toContain("has no wire");
	const [found, ...more] = floatingInput.check(car("ECU.5 > stowed"));
	expect(more).toEqual([]);
	expect(found!.why).toContain("leads to no part, and ECU sees 5 V in 'rest', above 4.7 V: it sets P0705");
	expect(found!.path).toEqual(["ECU", "ECU.5", "L0"]);
});

test("what hangs on nothing is this rule's alone", () => {
	expect(codeSet.check(car())).toEqual([]);
});

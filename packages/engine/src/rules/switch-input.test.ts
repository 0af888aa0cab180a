import { expect, test } from "vitest";
import {
	battery,
	benchCircuit,
	grounded,
	joint,
	part,
	unit,
	wire,
} from "./support/bench-loom.test-helper.js";
import { switchInput } from "./switch-input.js";

const ecu = unit("ECU", "control unit", {
	1: "supply",
	2: "ground",
	3: "input pull-up",
	4: "input pull-down",
	5: "sensor return",
});
const clutch = part("CLU", "switch", ["1", "2"], { positions: "released:; pressed:1-2" });

const check = (runs: readonly string[], conditions: Record<string, Record<string, string>> = { rest: {} }) =>
	switchInput.check(
		benchCircuit({
			parts: [battery, ecu, clutch],
			joints: [joint("G1", "ground"), joint("G2", "ground", { metal: "engine" })],
			conditions,
			wires: [
				...grounded,
				wire("W1", "BAT.+ > ECU.1", 2.5),
				wire("W2", "ECU.2 > G1", 2.5),
				...runs.map((run, k) => wire(`L${k + 1}`, run, 0.5)),
			],
		}),
	);

test("a switch to ground, to the unit's return, or from a supply moves its input", () => {
	expect(check(["ECU.3 > CLU.1", "CLU.2 > G1"])).toEqual([]);
	expect(check(["ECU.3 > CLU.1", "CLU.2 > ECU.5"])).toEqual([]);
	expect(check(["ECU.4 > CLU.1", "CLU.2 > BAT.+"])).toEqual([]);
	expect(check(["ECU.3 > CLU.1", "CLU.2 > G1"], { a: {}, b: { CLU: "pressed" } })).toEqual([]);
});

test("a switch whose ground lead was forgotten, or goes to metal that nothing straps to the battery", () => {
	const [found, ...more] = check(["ECU.3 > CLU.1", "CLU.2 > stowed"]);
	expect(more).toEqual([]);
	expect(found).toMatchObject({ rule: "switch-input", severity: "warn" });
	expect(found!.why).toContain("stays at 5 V in every position of CLU");
	expect(found!.path).toEqual(["ECU.3", "L1", "CLU.1", "CLU", "CLU.2", "L2"]);
	expect(check(["ECU.3 > CLU.1", "CLU.2 > G2"])).toHaveLength(1);
});

test("a pulled-down input that is switched to ground stays low", () => {
	expect(check(["ECU.4 > CLU.1", "CLU.2 > G1"])).toHaveLength(1);
});

test("an input tied to the return on purpose, where the switch has its return too", () => {
	expect(check(["ECU.3 > ECU.5", "ECU.5 > CLU.1", "CLU.2 > ECU.4"])).toHaveLength(1);
	expect(check(["ECU.3 > ECU.5", "ECU.5 > CLU.1"])).toEqual([]);
});

test("without a condition that powers the unit nothing can be said", () => {
	expect(check(["ECU.3 > CLU.1", "CLU.2 > stowed"], { off: { BAT: "off" } })).toEqual([]);
});

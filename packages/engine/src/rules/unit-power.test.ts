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
import { unitPower } from "./unit-power.js";

const ecu = unit("ECU", "control unit", { 1: "supply", 2: "supply", 3: "ground", 4: "wake" });
const key = part("KEY", "switch", ["30", "15"], { positions: "off:; run:30-15" });

const car = (
	runs: readonly string[],
	conditions: Record<string, Record<string, string>> = { off: {}, run: { KEY: "run" } },
) =>
	benchCircuit({
		parts: [battery, key, ecu],
		joints: [joint("G1", "ground"), joint("G2", "ground", { metal: "engine" })],
		conditions,
		wires: [...grounded, wire("W1", "BAT.+ > KEY.30"), ...runs.map((run, k) => wire(`L${k + 1}`, run))],
	});

const whole = ["BAT.+ > ECU.1", "KEY.15 > ECU.2", "ECU.3 > G1", "KEY.15 > ECU.4"];

test("a unit with both supplies, ground and wake; a unit that is not fitted", () => {
	expect(unitPower.check(car(whole))).toEqual([]);
	expect(unitPower.check(car([]))).toEqual([]);
});

test("a supply that lost its wire", () => {
	const [found, ...more] = unitPower.check(car([...whole.slice(0, 1), "stowed > ECU.2", ...whole.slice(2)]));
	expect(more).toEqual([]);
	expect(found).toMatchObject({ rule: "unit-power", severity: "stop", where: "ECU: supply ECU.2" });
	expect(found!.path).toEqual(["L2", "ECU.2", "ECU"]);
});

test("a ground on metal that nothing straps to the battery", () => {
	const wires = ["BAT.+ > ECU.1", "KEY.15 > ECU.2", "ECU.3 > G2", "KEY.15 > ECU.4"];
	const found = unitPower.check(car(wires));
	expect(found.find((f) => f.where.includes("ground"))!.why).toContain(
		"nothing leads to the battery's minus",
	);
	expect(unitPower.check(car([...wires, "G1 > G2"]))).toEqual([]);
});

test("a wake line that no listed condition raises", () => {
	expect(unitPower.check(car(whole, { off: {} })).map((f) => f.where)).toEqual([
		"ECU: supply ECU.2",
		"ECU: wake ECU.4",
	]);
});

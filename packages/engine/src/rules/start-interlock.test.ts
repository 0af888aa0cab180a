import { expect, test } from "vitest";
import { startInterlock } from "./start-interlock.js";
import {
	battery,
	benchCircuit,
	joint,
	type PartRow,
	part,
	unit,
	wire,
} from "./support/bench-loom.test-helper.js";

const key = part("KEY", "switch", ["30", "15", "50"], {
	positions: "off:; run:30-15; start:30-15,30-50",
	duty: "start key",
});
const clutch = part("CLU", "switch", ["1", "2"], {
	positions: "released:; pressed:1-2",
	duty: "clutch switch",
});
const neutral = part("NEU", "switch", ["1", "2"], {
	positions: "gear:; neutral:1-2",
	duty: "neutral switch",
});
const selector = part("SEL", "switch", ["1", "2", "3"], {
	positions: "P:1-2; R:1-3; N:1-2; D:",
	duty: "selector",
});
const starter = part("ST", "starter", ["30", "50", "31"], { duty: "starter", label: "starter" });

/** Start line: key 50 through the given runs to ST.50. */
function car(
	line: readonly string[],
	parts: readonly PartRow[],
	conditions: Record<string, Record<string, string>> = { rest: {} },
) {
	return benchCircuit({
		parts: [battery, key, starter, ...parts],
		joints: [joint("G1", "ground"), joint("S1")],
		conditions,
		wires: [
			wire("W-", "BAT.- > G1", 50, 0.3),
			wire("W1", "BAT.+ > ST.30", 50),
			wire("W2", "ST.31 > G1", 50),
			wire("W3", "BAT.+ > KEY.30", 4),
			...line.map((run, k) => wire(`L${k + 1}`, run, 2.5)),
		],
	});
}

test("start line through the clutch switch", () => {
	expect(startInterlock.check(car(["KEY.50 > CLU.1", "CLU.2 > ST.50"], [clutch, neutral]))).toEqual([]);
});

test("clutch and neutral contacts side by side", () => {
	const line = ["KEY.50 > CLU.1", "CLU.2 > S1", "S1 > ST.50", "KEY.50 > NEU.1", "NEU.2 > S1"];
	expect(startInterlock.check(car(line, [clutch, neutral]))).toEqual([]);
});

test("start line joined past the clutch switch, where the old range switch was", () => {
	const [found, ...more] = startInterlock.check(car(["KEY.50 > ST.50"], [clutch, neutral]));
	expect(more).toEqual([]);
	expect(found).toMatchObject({ rule: "start-interlock", severity: "stop" });
	expect(found!.why).toContain("(CLU released, NEU gear)");
	expect(found!.why).not.toContain("pressed");
	expect(found!.path).toEqual(["BAT.+", "W3", "KEY.30", "KEY", "KEY.50", "L1", "ST.50", "ST"]);
	expect(found!.cautions.join()).toContain("chock the wheels");
});

test("a clutch contact that works the wrong way round", () => {
	const wrong = part("CLU", "switch", ["1", "2"], {
		positions: "released:1-2; pressed:",
		duty: "clutch switch",
	});
	const [found] = startInterlock.check(car(["KEY.50 > CLU.1", "CLU.2 > ST.50"], [wrong]));
	expect(found!.why).toContain("(CLU released)");
});

test("a selector permits in P and N only, and no longer once there is a clutch switch", () => {
	const line = ["KEY.50 > SEL.1", "SEL.2 > ST.50"];
	expect(startInterlock.check(car(line, [selector]))).toEqual([]);
	const [found] = startInterlock.check(car([...line, "SEL.3 > ST.50"], [selector]));
	expect(found!.why).toContain("(SEL R)");
	expect(startInterlock.check(car(line, [selector, clutch]))).toHaveLength(1);
});

test("an open start line is found: no combination starts", () => {
	const [found] = startInterlock.check(car(["KEY.50 > CLU.1", "CLU.2 > cut"], [clutch]));
	expect(found!.why).toContain("turns in no position");
});

test("through a relay that a unit drives: the unit's driver stands as in the car's own condition", () => {
	const parts = [
		unit("ECU", "control unit", { 1: "supply", 2: "ground", 3: "low-side" }),
		part("K1", "relay", ["85", "86", "30", "87"]),
		clutch,
	];
	const line = (coil: string) => [
		"BAT.+ > ECU.1",
		"ECU.2 > G1",
		"ECU.3 > K1.85",
		...(coil === "CLU" ? ["KEY.50 > CLU.1", "CLU.2 > K1.86"] : ["KEY.50 > K1.86"]),
		"BAT.+ > K1.30",
		"K1.87 > ST.50",
	];
	const conditions = { cranking: { KEY: "start", CLU: "pressed", "ECU.3": "on" }, run: { KEY: "run" } };
	expect(startInterlock.check(car(line("CLU"), parts, conditions))).toEqual([]);
	expect(startInterlock.check(car(line("none"), parts, conditions))[0]!.why).toContain("as in 'cranking'");
});

test("without a named position, a key, or any switch there is a clear finding", () => {
	const odd = part("CLU", "switch", ["1", "2"], { positions: "up:; floor:1-2", duty: "clutch switch" });
	expect(startInterlock.check(car(["KEY.50 > CLU.1", "CLU.2 > ST.50"], [odd]))[0]!.mend).toContain(
		"pressed, down",
	);
	expect(startInterlock.check(car(["KEY.50 > ST.50"], []))[0]!.mend).toContain("Put a clutch switch");
	const plain = benchCircuit({ parts: [battery, starter], wires: [] });
	expect(startInterlock.check(plain)[0]!.mend).toContain("duty 'start key'");
	expect(startInterlock.check(benchCircuit({ parts: [battery, key], wires: [] }))).toEqual([]);
});

import { expect, test } from "vitest";
import { reversingLamps } from "./reversing-lamps.js";
import {
	battery,
	benchCircuit,
	grounded,
	joint,
	type PartRow,
	part,
	unit,
	wire,
} from "./support/bench-loom.test-helper.js";

const key = part("KEY", "switch", ["30", "15"], { positions: "off:; run:30-15", duty: "start key" });
const reverse = part("REV", "switch", ["1", "2"], {
	positions: "forward:; reverse:1-2",
	duty: "reversing switch",
});
const selector = part("SEL", "switch", ["1", "2"], { positions: "P:; R:1-2; N:; D:", duty: "selector" });
const lamp = (id: string) => part(id, "lamp", ["a", "b"], { values: { watts: 21 }, duty: "reversing lamp" });
const run = { off: {}, run: { KEY: "run" } };

function car(
	line: readonly string[],
	parts: readonly PartRow[],
	conditions: Record<string, Record<string, string>> = run,
) {
	return benchCircuit({
		parts: [battery, key, lamp("E1"), lamp("E2"), ...parts],
		joints: [joint("G1", "ground"), joint("S1")],
		conditions,
		wires: [
			...grounded,
			wire("W1", "BAT.+ > KEY.30", 2.5),
			wire("W2", "S1 > E1.a"),
			wire("W3", "S1 > E2.a"),
			wire("W4", "E1.b > G1"),
			wire("W5", "E2.b > G1"),
			...line.map((r, k) => wire(`L${k + 1}`, r)),
		],
	});
}

test("lamps through the reversing switch, also where no condition lists reverse", () => {
	expect(reversingLamps.check(car(["KEY.15 > REV.1", "REV.2 > S1"], [reverse]))).toEqual([]);
});

test("a lamp lead that was left open: both lamps are found dark in reverse", () => {
	const found = reversingLamps.check(car(["KEY.15 > REV.1", "REV.2 > stowed"], [reverse]));
	expect(found.map((f) => f.where)).toEqual(["E1, reversing lamp", "E2, reversing lamp"]);
	expect(found[0]).toMatchObject({ rule: "reversing-lamps", severity: "warn" });
	expect(found[0]!.why).toContain("0 V in 'run' with REV reverse");
});

test("a thin lead that starves the lamps", () => {
	const thin = benchCircuit({
		parts: [battery, key, reverse, lamp("E1")],
		conditions: run,
		wires: [
			...grounded,
			wire("W1", "BAT.+ > KEY.30"),
			wire("W2", "KEY.15 > REV.1"),
			wire("W3", "REV.2 > E1.a", 0.35, 60),
			wire("W4", "E1.b > G1"),
		],
	});
	const [found] = reversingLamps.check(thin);
	expect(found!.why).toMatch(/gets \d\.\d+ V/);
	expect(found!.path).toEqual([
		"BAT.+",
		"W1",
		"KEY.30",
		"KEY",
		"KEY.15",
		"W2",
		"REV.1",
		"REV",
		"REV.2",
		"W3",
		"E1.a",
		"E1",
	]);
});

test("lamps bridged past the switch are lit out of reverse", () => {
	const [found] = reversingLamps.check(car(["KEY.15 > REV.1", "REV.2 > S1", "KEY.15 > S1"], [reverse]));
	expect(found!.why).toContain("must be dark");
	expect(found!.path).toContain("L3");
});

test("a listed condition in reverse brings its drivers with it", () => {
	const bcu = unit("BCU", "control unit", { 1: "supply", 2: "ground", 3: "high-side", 4: "input pull-up" });
	const line = ["KEY.15 > BCU.1", "BCU.2 > G1", "BCU.3 > S1", "BCU.4 > REV.1", "REV.2 > G1"];
	const listed = { ...run, reverse: { KEY: "run", REV: "reverse", "BCU.3": "on" } };
	expect(reversingLamps.check(car(line, [bcu, reverse], listed))).toEqual([]);
	expect(reversingLamps.check(car(line, [bcu, reverse]))).toHaveLength(2);
});

test("without a reversing switch the selector's R decides; without either that is said", () => {
	expect(reversingLamps.check(car(["KEY.15 > SEL.1", "SEL.2 > S1"], [selector]))).toEqual([]);
	expect(reversingLamps.check(car(["KEY.15 > SEL.1"], [selector]))).toHaveLength(2);
	const [found, ...more] = reversingLamps.check(car([], []));
	expect(more).toEqual([]);
	expect(found!.mend).toContain("duty 'reversing switch'");
});

import { expect, test } from "vitest";
import { cutEnd } from "./cut-end.js";
import {
	battery,
	benchCircuit,
	grounded,
	joint,
	part,
	unit,
	wire,
} from "./support/bench-loom.test-helper.js";

const key = part("KEY", "switch", ["30", "15"], { positions: "off:; run:30-15" });

function car(
	run: string,
	conditions: Record<string, Record<string, string>> = { off: {}, run: { KEY: "run" } },
) {
	return benchCircuit({
		parts: [
			battery,
			key,
			unit("ECU", "control unit", { 1: "supply", 2: "ground", 3: "input pull-up", 4: "sensor return" }),
		],
		joints: [joint("G1", "ground"), joint("S1")],
		conditions,
		wires: [
			...grounded,
			wire("W1", "BAT.+ > KEY.30"),
			wire("W2", "KEY.15 > S1"),
			wire("W3", "S1 > ECU.1"),
			wire("W4", "ECU.2 > G1"),
			wire("W5", run),
		],
	});
}

test("an isolated end and an emptied cavity are right", () => {
	expect(cutEnd.check(car("S1 > stowed"))).toEqual([]);
	expect(cutEnd.check(car("stowed > stowed"))).toEqual([]);
});

test("a bare end that the key makes live stops the work, with the way the volts come", () => {
	const [found, ...more] = cutEnd.check(car("S1 > cut"));
	expect(more).toEqual([]);
	expect(found).toMatchObject({ rule: "cut-end", severity: "stop" });
	expect(found!.why).toMatch(/carries 12\.\d V in 'run'/);
	expect(found!.path).toEqual(["BAT.+", "W1", "KEY.30", "KEY", "KEY.15", "W2", "S1", "W5"]);
});

test("the same end without a condition that feeds it is a warning", () => {
	expect(cutEnd.check(car("S1 > cut", { off: {} }))[0]).toMatchObject({ severity: "warn" });
});

test("a pulled-up input is live too; a sensor return and a wire on its own are not", () => {
	const [pulled] = cutEnd.check(car("ECU.3 > cut"));
	expect(pulled!.why).toMatch(/carries (5|5\.\d+|4\.\d+) V/);
	expect(pulled!.path.slice(-4)).toEqual(["ECU.1", "ECU", "ECU.3", "W5"]);
	expect(cutEnd.check(car("ECU.4 > cut"))[0]).toMatchObject({ severity: "warn", path: ["ECU.4", "W5"] });
	expect(cutEnd.check(car("cut > cut")).map((f) => f.where)).toEqual([
		"wire W5 (1 mm2), two cut ends; loose at both ends",
	]);
});

import { expect, test } from "vitest";
import { battery, benchCircuit, connector, grounded, part, unit, wire } from "./bench-loom.test-helper.js";
import { CAUTIONS } from "./cautions.js";
import { finding } from "./finding.js";

const said = { where: "here", why: "so", mend: "Join the two wires." };

const circuit = benchCircuit({
	parts: [
		battery,
		{ ...connector("X9"), part: { ...connector("X9").part, marks: ["pyrotechnic"] } },
		unit("HRN", "switch", { 1: "1", 2: "2" }, { connector: "X9", positions: "off:; on:1-2" }),
		part("Q1", "igniter", ["a", "b"], { marks: ["pyrotechnic"] }),
		part("P1", "motor", ["a", "b"], { values: { ohms: 2 }, label: "fuel pump" }),
		part("S1", "switch", ["1", "2"], { duty: "brake switch", positions: "off:; on:1-2" }),
		part("CLU", "switch", ["1", "2"], { duty: "clutch switch", positions: "off:; on:1-2" }),
	],
	wires: [...grounded, wire("W1", "Q1.a > Q1.b", 0.5, 1, { marks: ["high voltage"] })],
});

test("cautions follow the circuits on the path; ids stand once in a row", () => {
	const on = (...path: string[]) => finding(circuit, "r", "warn", { ...said, path }).cautions;
	expect(on("P1.a", "P1")).toEqual([CAUTIONS.fuel]);
	expect(on("BAT.+")).toEqual([CAUTIONS.battery]);
	expect(on("W-")).toEqual([CAUTIONS.battery]);
	expect(on("S1", "CLU")).toEqual([CAUTIONS.brakes, CAUTIONS.start]);
	expect(on("HRN.1")).toEqual([CAUTIONS.restraint]);
	expect(finding(circuit, "r", "warn", { ...said, path: ["P1", "P1", "", "S1"] }).path).toEqual(["P1", "S1"]);
});

test("restraint and high-voltage circuits get no advice but the maker's procedure", () => {
	const mend = (...path: string[]) => finding(circuit, "r", "warn", { ...said, path }).mend;
	expect(mend("P1")).toBe("Join the two wires.");
	expect(mend("Q1.a", "Q1")).toContain("by the maker's procedure only");
	expect(mend("W1")).toContain("high voltage");
	// A horn lead in a plug shared with the restraint circuit: the caution is enough.
	expect(mend("HRN.1")).toBe("Join the two wires.");
});

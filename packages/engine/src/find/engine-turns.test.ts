import { expect, it } from "vitest";
import { demoCar } from "../test-support/demo.test-helper.js";
import { turningCautions, turningMinutes } from "./engine-turns.js";
import { findFaults } from "./find.js";
import { parseEvidence } from "./parse-evidence.js";

const car = demoCar("main");
const circuit = car.circuit("converted");

it("a reading with the engine turning costs more, and says what to mind", () => {
	expect(turningMinutes(circuit, "key-on")).toBe(0);
	expect(turningCautions(circuit, "key-on")).toEqual([]);
	expect(turningMinutes(circuit, "running")).toBeGreaterThan(0);
	expect(turningCautions(circuit, "running").join(" ")).toMatch(/engine runs/);
	// Key at start with a gear engaged turns nothing where the interlock is sound; it is not relied upon.
	for (const when of ["cranking", "cranking-in-gear", "key-on; S-KEY=start"]) {
		expect(turningMinutes(circuit, when), when).toBeGreaterThan(turningMinutes(circuit, "running"));
		expect(turningCautions(circuit, when).join(" "), when).toMatch(
			/car may jump.*second person holds the key/,
		);
	}
});

it("what a reading with the key at run tells as well is not read while cranking", () => {
	const functions = { cranks: true, starts: false };
	const codes = ["P0118", "P0113", "P0198", "P0108", "P0103", "P0523", "P0335", "P0340", "P0365"];
	const evidence = { title: "", of: "converted", occasions: [{ codes, units: ["ECU"], functions }] };
	const { next } = findFaults(car, parseEvidence(JSON.stringify(evidence), "case.json"));
	expect(next!.question).toMatchObject({ from: "ECU.B47", when: "key-on" });
	expect(next!.cautions).toHaveLength(1);
});

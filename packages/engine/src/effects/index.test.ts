import { describe, expect, test } from "vitest";
import { battery, benchCircuit, grounded, part, wire } from "../rules/support/bench-loom.test-helper.js";
import { effectsOf } from "./index.js";

// 12.6 V over a heater of 1.2 ohm: some 10 A.
const car = (mm2: number, amps = 15, ground = "G1") =>
	benchCircuit({
		parts: [
			battery,
			part("F1", "fuse", ["in", "out"], { values: { amps } }),
			part("H", "heater", ["a", "b"], { values: { ohms: 1.2 } }),
		],
		wires: [
			...grounded,
			wire("W1", "BAT.+ > F1.in", 6),
			wire("W2", "F1.out > H.a", mm2, 4),
			wire("W3", `H.b > ${ground}`, 2.5),
		],
	});

test("nothing changed: nothing to tell", () => {
	expect(effectsOf(car(2.5), car(2.5))).toEqual({
		readings: [],
		findings: { come: [], gone: [] },
		sizes: { wires: [], fuses: [], loads: [], splices: [] },
	});
});

describe("a thinner wire", () => {
	const { readings, findings, sizes } = effectsOf(car(2.5), car(0.5));

	test("the volts at the heater", () => {
		const [first] = readings;
		expect(first).toMatchObject({ contact: "H.a", condition: "rest", conditions: 1 });
		// 4 m of 0.5 mm2 have some 0.14 ohm, of 2.5 mm2 a fifth: a difference of about 1.1 V at 9 A.
		expect(first!.before! - first!.after!).toBeGreaterThan(0.9);
		expect(first!.before! - first!.after!).toBeLessThan(1.2);
	});

	test("what the rules say now, and take back when it is undone", () => {
		expect(findings.come.map((finding) => finding.rule)).toEqual(
			expect.arrayContaining(["fuse-too-large", "voltage-drop"]),
		);
		const back = effectsOf(car(0.5), car(2.5)).findings;
		expect(back.come).toEqual([]);
		expect(back.gone).toEqual(findings.come);
	});

	test("the sizes of the wire, its fuse and its load", () => {
		expect(sizes.wires.find((wire) => wire.id === "W2")).toMatchObject({
			before: { mm2: 2.5, suffices: true },
			after: { mm2: 0.5, suffices: false },
		});
		expect(sizes.fuses).toMatchObject([
			{ id: "F1", after: { faults: [expect.stringContaining("thinnest wire"), expect.anything()] } },
		]);
		expect(sizes.loads).toMatchObject([{ id: "H", before: { suffices: true }, after: { suffices: false } }]);
	});
});

test("a ground that is lost: readings become what the feed has, and the load no longer works", () => {
	const { readings, sizes } = effectsOf(car(2.5), car(2.5, 15, "cut"));
	expect(readings.find((reading) => reading.contact === "H.b")!.after).toBeCloseTo(12.6, 1);
	expect(sizes.loads).toMatchObject([{ id: "H", after: undefined }]);
});

test("a larger fuse moves no reading", () => {
	const { readings, findings, sizes } = effectsOf(car(2.5), car(2.5, 40));
	expect(readings).toEqual([]);
	expect(findings.come.map((finding) => finding.rule)).toEqual(["fuse-too-large"]);
	expect(sizes.fuses).toHaveLength(1);
});

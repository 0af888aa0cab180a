import { describe, expect, test } from "vitest";
import {
	battery,
	benchCircuit,
	connector,
	grounded,
	joint,
	part,
	unit,
	wire,
} from "../rules/support/bench-loom.test-helper.js";
import { demoCar } from "../test-support/demo.test-helper.js";
import { wireOhms } from "../units/index.js";
import { reference } from "../units/reference.test-helper.js";
import { MOTOR_START } from "./currents.js";
import { SIZE_SOURCES, sizeCircuits } from "./index.js";
import { LEAST_MM2 } from "./wire-size.js";

// 12.6 V over 1.26 ohm and some 55 milliohm of battery, fuse and wires: 9.6 A. The lamp of 21 W at 13.5 V has 8.68 ohm hot, a tenth of it cold.
const bench = (mm2: number, amps = 15) =>
	benchCircuit({
		parts: [
			battery,
			part("F1", "fuse", ["in", "out"], { values: { amps } }),
			part("H", "heater", ["a", "b"], { values: { ohms: 1.26 } }),
			unit("X1", "connector", {}, { marks: ["wet"], values: { least_mm2: 0.5, most_mm2: 1.5 } }),
			unit("E1", "lamp", { 1: "a", 2: "b" }, { values: { watts: 21 }, connector: "X1" }),
			part("M", "motor", ["a", "b"], { values: { ohms: 12.6 } }),
			connector("X2"),
		],
		joints: [joint("G1", "ground"), joint("S1")],
		wires: [
			...grounded,
			wire("W1", "BAT.+ > F1.in", 6, 0.5),
			wire("W2", "F1.out > S1", mm2, 2, { bundle: "floor" }),
			wire("W3", "S1 > H.a", mm2, 1),
			wire("W4", "H.b > G1", 2.5, 1),
			wire("W5", "S1 > E1.1", 1, 1),
			wire("W6", "E1.2 > G1", 1, 1),
			wire("W7", "S1 > M.a", 0.5, 1),
			wire("W8", "M.b > G1", 0.5, 1),
		],
	});

const find = (mm2: number, amps?: number) => {
	const sizes = sizeCircuits(bench(mm2, amps));
	const of = (id: string) => sizes.wires.find((one) => one.wire === id)!;
	return { ...sizes, of };
};

describe("a heater, a lamp and a motor behind one fuse", () => {
	const { of, fuses, splices, loads } = find(2.5);
	const [fuse] = fuses;

	test("currents: lasting, with the lamp cold, with the motor starting", () => {
		expect(of("W3").steady.amps).toBeCloseTo(9.6, 1);
		const [lamp, motor] = [of("W5").steady.amps, of("W7").steady.amps];
		expect(of("W2").steady.amps).toBeCloseTo(of("W3").steady.amps + lamp + motor, 9);
		// Cold it draws ten times as much, by the volts it has when hot.
		expect(of("W5").rush.amps / lamp).toBeCloseTo(10, 6);
		expect(of("W7").start.amps / motor).toBeCloseTo(MOTOR_START, 6);
		expect(fuse!.rush.amps).toBeCloseTo(of("W2").steady.amps + 9 * lamp, 6);
		expect(fuse!.start.amps).toBeCloseTo(of("W2").steady.amps + 5 * motor, 6);
		expect(of("W6").brief).toEqual(of("W6").steady);
	});

	test("volts lost: current times the resistance of the warm wire", () => {
		const { steady, celsius, volts } = of("W3");
		expect(volts).toBeCloseTo(steady.amps * wireOhms({ mm2: 2.5, metres: 1, celsius }).ohms, 9);
	});

	test("the fuse: what lies behind it, its thinnest wire, what it lets through", () => {
		expect(fuse!.wires).toEqual(["W2", "W3", "W5", "W7"]);
		expect(fuse).toMatchObject({ fuse: "F1", amps: 15, thinnest: "W7", largestAmps: 10 });
		expect(fuse!.faults).toContain("is larger than its thinnest wire allows");
		expect(fuse!.worst!.celsius).toBeGreaterThan(fuse!.worst!.limitCelsius);
		expect(fuse!.share).toBeCloseTo(of("W2").steady.amps / 15, 9);
	});

	test("needed sizes: by the fuse before it, by heat, by the hand", () => {
		expect(of("W7")).toMatchObject({
			fuse: "F1",
			suffices: false,
			needed: { mm2: 0.75, awg: "18", because: "fuse" },
		});
		expect(of("W8")).toMatchObject({
			fuse: "",
			suffices: true,
			needed: { mm2: LEAST_MM2, because: "handling" },
		});
		expect(of("W4").needed).toMatchObject({ mm2: 0.5, because: "heat" });
	});

	test("ends: ring, blade, plug with its range and its seal", () => {
		expect(of("W1").ends.map((end) => end.terminal)).toEqual(["ring terminal", "blade receptacle 2.8 mm"]);
		expect(of("W5").ends).toEqual([
			{
				at: "E1.1",
				terminal: "crimp terminal of X1, cavity 1, for 0.5 to 1.5 mm2",
				stripMm: { value: 5, source: "reference/electrical/terminal-practice.csv 002" },
				pullNewtons: { value: 108, source: "reference/electrical/crimp-pull-force-mm2.csv 011" },
				pullNewtonsAwg: { value: 89, source: "reference/electrical/crimp-pull-force-awg.csv 005" },
				sealMm: { value: 2.1, source: "reference/electrical/cable-diameter.csv 005" },
			},
		]);
	});

	test("the splice of four wires, and the loads", () => {
		expect(splices).toMatchObject([
			{
				splice: "S1",
				kind: "parallel crimp",
				mm2: 6.5,
				barrelMm2: { value: 10 },
				pullNewtons: { value: 60 },
			},
		]);
		expect(splices[0]!.sleeveMm).toBeDefined();
		expect(loads.map((load) => load.part)).toEqual(["H", "E1", "M"]);
		expect(loads.every((load) => load.suffices)).toBe(true);
	});
});

test("a feed too thin for its heater", () => {
	const { of, loads } = find(0.22);
	expect(of("W3").celsius).toBeGreaterThan(of("W3").limitCelsius);
	expect(of("W3").suffices).toBe(false);
	expect(loads.find((load) => load.part === "H")!.suffices).toBe(false);
});

test("a fuse too small for its loads", () => {
	const [fuse] = find(2.5, 10).fuses;
	expect(fuse!.faults).toEqual(["carries more than its rating"]);
	expect(find(2.5, 15).fuses[0]!.faults).toContain("carries more than 75 % of its rating for long");
});

test("the camper's sizes do, as delivered and as converted", () => {
	const car = demoCar("main");
	for (const which of ["delivered", "converted"] as const) {
		const { wires, fuses, loads } = sizeCircuits(car.circuit(which));
		expect(wires.length).toBe(car[which].wires.size);
		expect([...wires, ...loads].filter((one) => !one.suffices)).toEqual([]);
		expect(fuses.filter((fuse) => fuse.faults.length > 0)).toEqual([]);
	}
});

test("every source that is a table is one, and has the rows named", () => {
	const named = Object.values(SIZE_SOURCES).flatMap((text) => [
		...text.matchAll(/([a-z0-9-]+)\.csv((?: \d{3},?)*)/g),
	]);
	expect(named.length).toBeGreaterThan(8);
	for (const [, table, rows] of named) {
		const ids = reference(table!).map((row) => row.id!.slice(-3));
		for (const row of rows!.match(/\d{3}/g) ?? []) expect(ids).toContain(row);
	}
});

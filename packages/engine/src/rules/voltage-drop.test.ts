import { expect, test } from "vitest";
import { reference } from "../units/reference.test-helper.js";
import {
	battery,
	benchCircuit,
	grounded,
	joint,
	part,
	unit,
	wire,
} from "./support/bench-loom.test-helper.js";
import { LIMITS, voltageDrop } from "./voltage-drop.js";

const key = part("KEY", "switch", ["30", "15"], { positions: "off:; run:30-15", values: { ohms: 0.001 } });
const run = { run: { KEY: "run" } };

// 55 W at 13.5 V is 3.31 ohm, about 3.7 A. By hand: 1.5 mm2 has some 12 milliohm a metre.
const headlamp = (feedMm2: number, groundMm2: number) =>
	benchCircuit({
		parts: [battery, key, part("E1", "lamp", ["a", "b"], { values: { watts: 55 }, label: "main beam" })],
		conditions: run,
		wires: [
			...grounded,
			wire("W1", "BAT.+ > KEY.30", 6),
			wire("W2", "KEY.15 > E1.a", feedMm2, 4),
			wire("W3", "E1.b > G1", groundMm2, 2),
		],
	});

test("a lamp on short thick wires passes; a long thin feed is found, with the wire that loses most", () => {
	expect(voltageDrop.check(headlamp(2.5, 1.5))).toEqual([]);
	const [found, ...more] = voltageDrop.check(headlamp(0.5, 1.5));
	expect(more).toEqual([]);
	expect(found).toMatchObject({ rule: "voltage-drop", severity: "warn" });
	expect(found!.where).toContain("most is lost in wire W2 (0.5 mm2)");
	expect(found!.path[0]).toBe("BAT.+");
	expect(found!.path).toContain("E1");
	expect(found!.path.at(-1)).toBe("BAT.-");
});

test("a thin ground is found although the whole stays within its limit", () => {
	const [found] = voltageDrop.check(headlamp(6, 0.5));
	expect(found!.where).toContain("wire W3");
});

test("a lamp that is switched off is not judged", () => {
	const circuit = benchCircuit({
		parts: [battery, key, part("E1", "lamp", ["a", "b"], { values: { watts: 55 } })],
		conditions: { rest: {} },
		wires: [
			...grounded,
			wire("W1", "BAT.+ > KEY.30", 6),
			wire("W2", "KEY.15 > E1.a", 0.35, 9),
			wire("W3", "E1.b > G1"),
		],
	});
	expect(voltageDrop.check(circuit)).toEqual([]);
});

test("what a unit's own driver takes does not count, its ground wire does", () => {
	const car = (groundMm2: number) =>
		benchCircuit({
			parts: [
				battery,
				unit("ECU", "control unit", { 1: "supply", 2: "ground", 3: "low-side|on_ohms=0.5" }),
				part("H1", "heater", ["a", "b"], { values: { ohms: 6 } }),
			],
			conditions: { on: { "ECU.3": "on" } },
			wires: [
				...grounded,
				wire("W1", "BAT.+ > ECU.1", 2.5),
				wire("W2", "BAT.+ > H1.a", 2.5),
				wire("W3", "H1.b > ECU.3", 2.5),
				wire("W4", "ECU.2 > G1", groundMm2, 2),
			],
		});
	expect(voltageDrop.check(car(2.5))).toEqual([]);
	const [found, ...more] = voltageDrop.check(car(0.35));
	// The heater's current lifts the unit's ground: one cause, one finding, both named.
	expect(more).toEqual([]);
	expect(found!.where).toContain("wire W4");
	expect(found!.why).toContain("Also over: H1.");
});

test("a series resistor takes its volts on purpose", () => {
	const circuit = benchCircuit({
		parts: [
			battery,
			part("R1", "resistor", ["a", "b"], { values: { ohms: 0.5 } }),
			part("M1", "motor", ["a", "b"], { values: { ohms: 1 } }),
		],
		wires: [
			...grounded,
			wire("W1", "BAT.+ > R1.a", 6),
			wire("W2", "R1.b > M1.a", 6),
			wire("W3", "M1.b > G1", 6),
		],
	});
	expect(voltageDrop.check(circuit)).toEqual([]);
});

const starting = (
	cable: number,
	control: number,
	conditions: Record<string, Record<string, string>> = { crank: { B: "on" } },
) =>
	benchCircuit({
		parts: [
			battery,
			part("ST", "starter", ["30", "50", "31"]),
			part("B", "switch", ["1", "2"], { positions: "off:; on:1-2" }),
			part("E1", "lamp", ["a", "b"], { values: { watts: 5 } }),
		],
		joints: [joint("G1", "ground"), joint("G2", "ground")],
		conditions,
		wires: [
			wire("W-", "BAT.- > G1", 50, 0.3),
			wire("W1", "BAT.+ > ST.30", cable, 1.2),
			wire("W2", "BAT.+ > B.1", 2.5),
			wire("W3", "B.2 > ST.50", control, 2),
			wire("W4", "ST.31 > G2", 50, 0.2),
			// Far too thin: but nobody judges a lamp while the starter turns.
			wire("W5", "BAT.+ > E1.a", 0.1, 20),
			wire("W6", "E1.b > G1"),
		],
	});

test("the starter's cables and its terminal 50 have limits of their own", () => {
	expect(voltageDrop.check(starting(50, 2.5))).toEqual([]);
	const cable = voltageDrop.check(starting(10, 2.5));
	expect(cable.map((f) => f.where)).toEqual([expect.stringContaining("ST starter motor")]);
	// With the starter at rest the battery stands across its open contact: the lamp is judged then.
	const resting = voltageDrop.check(starting(50, 2.5, { rest: {} }));
	expect(resting.map((f) => f.where)).toEqual([expect.stringContaining("E1")]);
	const control = voltageDrop.check(starting(50, 0.35));
	expect(control.map((f) => f.where)).toEqual([expect.stringContaining("ST terminal 50")]);
});

// Source: reference/electrical/practice-limits.csv.
test("the limits are those of the reference table", () => {
	const row = (number: string) =>
		Number(reference("practice-limits").find((r) => r.id === `practice-limits-${number}`)!.value);
	expect(LIMITS["control unit"].ground).toBe(row("017"));
	expect(LIMITS["starter motor"].ground).toBe(row("011"));
	expect(LIMITS["starter motor"].groundPer100A).toBe(row("001"));
	expect(LIMITS["starter motor"].feed).toBe(row("010"));
	expect(LIMITS["starter motor"].feed).toBe(row("020"));
});

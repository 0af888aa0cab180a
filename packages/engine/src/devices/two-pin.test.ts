/** Plain resistances between two pins, bus ends, modules and in-line connectors. */
import { describe, expect, it } from "vitest";
import { OnBench, off } from "./bench.test-helper.js";

const kinds = [
	["resistor; ohms=330", 330],
	["heater; ohms=1.5", 1.5],
	["coil; ohms=24", 24],
	["injector", 12],
	["injector; ohms=14.5", 14.5],
	["motor; ohms=2.4", 2.4],
	["coil sensor; ohms=900", 900],
] as const;

describe.each(kinds)("%s", (part, ohms) => {
	const bench = new OnBench({
		parts: { BAT: "battery; volts=12; ohms=0.000001", X: part },
		pins: { "BAT.+": "+", "BAT.-": "-", "X.1": "a", "X.2": "b" },
		nets: ["BAT.+ X.1", "BAT.- X.2 GND"],
		when: { on: { BAT: "on" }, off: { BAT: "off" } },
	});
	it("by ohmmeter and by the current it draws", () => {
		expect(off(bench.ohms("X.1!pin", "X.2!pin", "off"), ohms)).toBeLessThan(1e-9);
		expect(off(bench.amps("X.1", "X.2", "on"), 12 / ohms)).toBeLessThan(4e-3);
	});
});

describe("bus end", () => {
	const bench = new OnBench({
		parts: { E: "bus end", F: "bus end; ohms=60" },
		pins: { "E.H": "high", "E.L": "low", "F.H": "high", "F.L": "low" },
		nets: ["E.H A", "E.L B", "F.H C", "F.L D"],
		when: { off: { E: "fitted" } },
	});
	it("120 ohm unless it says otherwise", () => {
		expect(bench.ohms("E.H!pin", "E.L!pin", "off")).toBeCloseTo(120, 9);
		expect(bench.ohms("F.H!pin", "F.L!pin", "off")).toBeCloseTo(60, 9);
	});
});

// 12 V x 0.5 A at 12 V: 24 ohm.
it("a module draws its named current at 12 V and leaves its other pins alone", () => {
	const bench = new OnBench({
		parts: { BAT: "battery; volts=12; ohms=0.000001", M: "module; amps=0.5" },
		pins: { "BAT.+": "+", "BAT.-": "-", "M.1": "supply", "M.2": "ground", "M.3": "wake" },
		nets: ["BAT.+ M.1", "BAT.- M.2 GND", "M.3 W"],
		when: { on: { BAT: "on" } },
	});
	expect(off(bench.amps("M.1", "M.2", "on"), 0.5)).toBeLessThan(1e-3);
	expect(bench.volts("M.3", "M.2", "on")).toBeNaN();
});

describe("connector from loom to loom", () => {
	const bench = new OnBench({
		parts: { X: "connector", R: "resistor; ohms=47" },
		pins: { "X.1a": "a @X 1", "X.1b": "b @X 1", "X.2a": "a @X 2", "X.2b": "b @X 2", "R.1": "a", "R.2": "b" },
		nets: ["X.1a A", "X.2a B", "X.1b R.1", "X.2b R.2"],
		when: { mated: { X: "mated" }, apart: { X: "unmated" } },
	});
	it("mated, each cavity goes through and to no other", () => {
		expect(bench.ohms("X.1a", "X.1b", "mated")).toBeLessThan(0.01);
		expect(off(bench.ohms("A", "B", "mated"), 47)).toBeLessThan(1e-3);
	});
	it("apart, the halves are open to each other; the far half still reads its load", () => {
		expect(bench.ohms("A", "B", "apart")).toBeNaN();
		expect(bench.ohms("X.1a", "X.1b", "apart")).toBeNaN();
		expect(off(bench.ohms("X.1b", "X.2b", "apart"), 47)).toBeLessThan(1e-3);
	});
});

it("an unmated plug opens every contact in it", () => {
	const bench = new OnBench({
		parts: { X: "connector", R: "resistor; ohms=47" },
		pins: { "R.1": "a @X 1", "R.2": "b @X 2" },
		nets: ["R.1 A", "R.2 B"],
		when: { mated: { X: "mated" }, apart: { X: "unmated" } },
	});
	expect(off(bench.ohms("R.1", "R.2", "mated"), 47)).toBeLessThan(1e-3);
	expect(bench.ohms("R.1", "R.2", "apart")).toBeNaN();
	expect(off(bench.ohms("R.1!pin", "R.2!pin", "apart"), 47)).toBeLessThan(1e-9);
});

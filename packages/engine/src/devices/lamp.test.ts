import { describe, expect, it } from "vitest";
import { OnBench, off } from "./bench.test-helper.js";
import { inrushAmps } from "./lamp.js";

/** A 21 W lamp at 13.5 V: 13.5^2 / 21 = 8.68 ohm hot, a tenth of it cold. */
const HOT = 13.5 ** 2 / 21;

function lampOn(volts: number, series = 0.001) {
	return new OnBench({
		parts: {
			BAT: `battery; volts=${volts}; ohms=0.000001`,
			R: `resistor; ohms=${series}`,
			L: "lamp; watts=21",
		},
		pins: { "BAT.+": "+", "BAT.-": "-", "R.1": "a", "R.2": "b", "L.1": "a", "L.2": "b" },
		nets: ["BAT.+ R.1", "R.2 L.1", "L.2 BAT.- GND"],
		when: { on: { BAT: "on" }, off: { BAT: "off" } },
	});
}

describe("filament", () => {
	it("draws its rated watts at its rated volts", () => {
		const bench = lampOn(13.5);
		expect(bench.state("L", "on")).toBe("hot");
		expect(off(bench.amps("L.1", "L.2", "on"), 21 / 13.5)).toBeLessThan(2e-3);
	});

	it("read by an ohmmeter it is cold: a tenth", () => {
		expect(off(lampOn(13.5).ohms("L.1!pin", "L.2!pin", "off"), HOT / 10)).toBeLessThan(1e-9);
	});

	// Behind 10 ohm a cold filament takes 12.6 x 0.868 / 10.868 = 1.006 V, below a fifth of 13.5 V: it stays cold.
	it("does not warm up behind too much resistance", () => {
		const bench = lampOn(12.6, 10);
		expect(bench.state("L", "on")).toBe("cold");
		expect(off(bench.volts("L.1", "L.2", "on"), (12.6 * HOT) / 10 / (10 + HOT / 10))).toBeLessThan(5e-3);
	});

	// Behind 2 ohm: cold 12.6 x 0.868 / 2.868 = 3.81 V warms it; hot it has 12.6 x 8.68 / 10.68 = 10.24 V.
	it("warms up behind a little", () => {
		const bench = lampOn(12.6, 2);
		expect(bench.state("L", "on")).toBe("hot");
		expect(off(bench.volts("L.1", "L.2", "on"), (12.6 * HOT) / (2 + HOT))).toBeLessThan(2e-3);
	});

	it("warms above a fifth of its rated volts and cools below a tenth, either way round", () => {
		const { spec } = lampOn(12).car.circuit("delivered").standing("on").automata[0]!;
		const after = (state: number, volts: number) => spec.states[spec.next(state, [volts])];
		expect([after(0, 2.69), after(0, 2.71), after(0, -2.71)]).toEqual(["cold", "hot", "hot"]);
		expect([after(1, 1.36), after(1, -1.36), after(1, 1.34)]).toEqual(["hot", "hot", "cold"]);
	});
});

describe("first rush", () => {
	const { parts } = lampOn(12.6).car.delivered;

	it("is the volts over the ohms that a meter finds on the cold lamp", () => {
		const cold = lampOn(12.6).ohms("L.1!pin", "L.2!pin", "off");
		expect(off(inrushAmps(parts.get("L")!, 12.6), 12.6 / cold)).toBeLessThan(1e-9);
	});

	// 21 W at 13.5 V are 1.56 A hot; ten times that cold.
	it("is its working current over its cold share", () => {
		const lamp = parts.get("L")!;
		expect(inrushAmps(lamp, 13.5)).toBeCloseTo(21 / 13.5 / 0.1, 9);
		const values = { ...lamp.values, cold_share: 0.07 };
		expect(inrushAmps({ ...lamp, values }, -13.5)).toBeCloseTo(21 / 13.5 / 0.07, 9);
	});

	it("of anything else is refused", () => {
		expect(() => inrushAmps(parts.get("R")!, 12)).toThrow("R is a resistor; wanted: a lamp with its watts");
	});
});

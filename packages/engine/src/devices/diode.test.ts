/** Diode and LED: one way they conduct behind their forward voltage, the other way they leak. */
import { describe, expect, it } from "vitest";
import { OnBench, off } from "./bench.test-helper.js";

function series(part: string, [first, second]: [string, string], ohms: number) {
	return new OnBench({
		parts: { BAT: "battery; volts=12; ohms=0.000001", R: `resistor; ohms=${ohms}`, D: part },
		pins: { "BAT.+": "+", "BAT.-": "-", "R.1": "a", "R.2": "b", "D.1": first, "D.2": second },
		nets: ["BAT.+ R.1", "R.2 D.1", "D.2 BAT.- GND"],
		when: { on: { BAT: "on" }, off: { BAT: "off" } },
	});
}

describe("diode", () => {
	// (12 - 0.7) V / (10 + 0.05) ohm = 1.124 A.
	it("conducts from anode to cathode less its forward voltage", () => {
		const bench = series("diode", ["a", "b"], 10);
		expect(bench.state("D", "on")).toBe("conducting");
		expect(off(bench.amps("D.1", "D.2", "on"), 11.3 / 10.05)).toBeLessThan(1e-3);
		expect(off(bench.volts("D.1", "D.2", "on"), 0.7 + 0.05 * 1.124)).toBeLessThan(5e-3);
	});

	// 12 V through 1 nS: 12 nA.
	it("turned round it leaks a few nanoamperes", () => {
		const bench = series("diode", ["b", "a"], 10);
		expect(bench.state("D", "on")).toBe("blocking");
		expect(off(bench.amps("D.1", "D.2", "on"), 12e-9)).toBeLessThan(1e-6);
		expect(bench.volts("D.1", "D.2", "on")).toBeCloseTo(12, 6);
	});

	// Reading ohms the meter's own volts are not modelled: without a source it blocks, beyond the meter's 40 Mohm.
	it("reads open on ohms", () => {
		expect(series("diode", ["a", "b"], 10).ohms("D.1", "D.2", "off")).toBeNaN();
	});

	it("is let go only by a reverse current", () => {
		const { spec } = series("diode", ["a", "b"], 10).car.circuit("delivered").standing("on").automata[0]!;
		const after = (state: number, volts: number) => spec.states[spec.next(state, [volts])];
		expect([after(0, 0.69), after(0, 0.71), after(0, -12)]).toEqual(["blocking", "conducting", "blocking"]);
		expect([after(1, 0.7), after(1, 0.699)]).toEqual(["conducting", "blocking"]);
	});
});

// (12 - 2) V / (470 + 530) ohm = 10 mA.
it("LED behind its own resistor", () => {
	const bench = series("led", ["a", "b"], 530);
	expect(bench.state("D", "on")).toBe("conducting");
	expect(off(bench.amps("D.1", "D.2", "on"), 0.01)).toBeLessThan(1e-3);
});

// A coil's free-wheel diode stands across it in reverse: it must not take current while the coil is fed.
it("across a coil in reverse it carries nothing", () => {
	const bench = new OnBench({
		parts: { BAT: "battery; volts=12", C: "coil; ohms=24", D: "diode" },
		pins: { "BAT.+": "+", "BAT.-": "-", "C.1": "a", "C.2": "b", "D.1": "b", "D.2": "a" },
		nets: ["BAT.+ C.1 D.1", "BAT.- C.2 D.2 GND"],
		when: { on: { BAT: "on" } },
	});
	expect(off(bench.amps("C.1", "C.2", "on"), 0.5)).toBeLessThan(1e-3);
	expect(Math.abs(bench.amps("D.1", "D.2", "on"))).toBeLessThan(1e-7);
});

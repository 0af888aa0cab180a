/** A sensor whose output follows its own supply, by hand. */
import { describe, expect, it } from "vitest";
import { OnBench, off } from "./bench.test-helper.js";

/** On a battery of 5 V behind `feed` ohms, its signal loaded by `load` ohms to ground. */
function bench(load: number, feed = 1e-6, values = "") {
	return new OnBench({
		parts: {
			BAT: `battery; volts=5; ohms=${feed}`,
			B: `position sensor${values}`,
			R: `resistor; ohms=${load}`,
		},
		pins: {
			"BAT.+": "+",
			"BAT.-": "-",
			"B.1": "supply",
			"B.2": "return",
			"B.3": "signal",
			"R.1": "a",
			"R.2": "b",
		},
		nets: ["BAT.+ B.1", "BAT.- B.2 R.2 GND", "B.3 R.1 SIG"],
		when: { low: { B: "0" }, middle: { B: "50" }, high: { B: "100" }, off: { BAT: "off" } },
	});
}

describe("its signal", () => {
	it.each([
		["low", 0.5],
		["middle", 2.5],
		["high", 4.5],
	])("%s: %d V of 5 V, hardly loaded", (when, volts) => {
		expect(off(bench(1e9).volts("B.3", "B.2", when), volts)).toBeLessThan(1e-4);
	});

	// 2.5 V behind 50 ohm on 200 ohm: 2 V. A divider of the sensor's own draw would fall much further.
	it("loaded, falls by its output's own ohms alone", () => {
		expect(off(bench(200).volts("B.3", "B.2", "middle"), 2)).toBeLessThan(1e-4);
	});

	// Its draw of 5 V / 10 mA = 500 ohm behind 125 ohm leaves 4 V of the 5: the share of that, 2 V.
	it("follows its supply", () => {
		expect(off(bench(1e9, 125).volts("B.3", "B.2", "middle"), 2)).toBeLessThan(1e-4);
	});

	it("takes its shares and ohms from the table", () => {
		const other = bench(100, 1e-6, "; output_ohms=100; low_percent=20; high_percent=60");
		expect(off(other.volts("B.3", "B.2", "high"), 1.5)).toBeLessThan(1e-4);
	});
});

it("draws its supply current whatever it shows and drives", () => {
	for (const when of ["low", "high"])
		expect(off(bench(200).amps("B.1", "B.2", when), 0.01)).toBeLessThan(1e-3);
});

it("by ohmmeter, battery off, its output is its own ohms beside the load", () => {
	expect(off(bench(200).ohms("B.3!pin", "B.2!pin", "off"), 40)).toBeLessThan(1e-3);
	expect(bench(1e9).volts("B.3", "B.2", "off")).toBeCloseTo(0, 9);
});

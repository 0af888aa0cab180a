/** Sensors on a 5 V supply or an ohmmeter. Published NTC tables: outside/thermistors.test.ts. */
import { describe, expect, it } from "vitest";
import { OnBench, off } from "./bench.test-helper.js";
import { thermistorOhms } from "./sensors.js";

const FIVE = { "BAT.+": "+", "BAT.-": "-" };

/** A three-wire sensor on 5 V, its signal pulled up to 5 V by `pull` ohms where given. */
function threeWire(part: string, states: readonly string[], pull?: number) {
	return new OnBench({
		parts: { BAT: "battery; volts=5; ohms=0.000001", B: part, R: `resistor; ohms=${pull ?? 1e9}` },
		pins: { ...FIVE, "B.1": "supply", "B.2": "return", "B.3": "signal", "R.1": "a", "R.2": "b" },
		nets: ["BAT.+ B.1 R.1", "BAT.- B.2 GND", "B.3 R.2 SIG"],
		when: {
			...Object.fromEntries(states.map((state) => [`at ${state}`, { B: state }])),
			apart: { BAT: "off" },
		},
	});
}

describe("potentiometer", () => {
	const bench = threeWire("potentiometer; ohms=5000; low_percent=10; high_percent=90", ["0", "25", "100"]);

	// 10 % to 90 % of the supply over its travel: 0.5 V, 10 + 80 / 4 = 30 % = 1.5 V, 4.5 V.
	it.each([
		["0", 0.5],
		["25", 1.5],
		["100", 4.5],
	])("at %s %%: %d V", (state, volts) => {
		expect(off(bench.volts("B.3", "B.2", `at ${state}`), volts)).toBeLessThan(1e-4);
	});

	it("its whole track from supply to return, a share of it to the wiper", () => {
		expect(off(bench.ohms("B.1!pin", "B.2!pin", "apart"), 5000)).toBeLessThan(1e-4);
		expect(off(bench.ohms("B.3!pin", "B.2!pin", "apart"), 500)).toBeLessThan(1e-4);
	});
});

describe("ratio sensor", () => {
	const bench = threeWire("ratio sensor; supply_amps=0.01", ["0", "50", "100"]);

	it.each([
		["0", 0.5],
		["50", 2.5],
		["100", 4.5],
	])("at %s %%: %d V", (state, volts) => {
		expect(off(bench.volts("B.3", "B.2", `at ${state}`), volts)).toBeLessThan(1e-4);
	});

	it("draws its own supply current at 5 V, whatever it shows", () => {
		for (const state of ["0", "50", "100"])
			expect(off(bench.amps("BAT.-", "BAT.+", `at ${state}`), 0.01)).toBeLessThan(1e-3);
	});
});

describe("hall sensor", () => {
	// Pulled up by 1000 ohm: 5 V x 30 / 1030 = 0.146 V when it pulls down.
	const bench = threeWire("hall sensor", ["open", "pulled down"], 1000);

	it("open, its signal is what pulls it up", () => {
		expect(bench.volts("B.3", "B.2", "at open")).toBeCloseTo(5, 4);
	});
	it("pulled down, the divider of pull-up and its output", () => {
		expect(off(bench.volts("B.3", "B.2", "at pulled down"), (5 * 30) / 1030)).toBeLessThan(1e-3);
	});
	it("draws its supply current", () => {
		expect(off(bench.amps("B.1", "B.2", "at open"), 0.006)).toBeLessThan(1e-3);
	});
});

describe("thermistor", () => {
	it("has its named ohms at 25 degrees C, and falls by B", () => {
		expect(thermistorOhms(2252, 3900, 25)).toBeCloseTo(2252, 9);
		// B from any two of its points is B again: ln(R1 / R2) / (1/T1 - 1/T2), IEC 60539-1 (from memory).
		const [cold, hot] = [thermistorOhms(2252, 3900, 0), thermistorOhms(2252, 3900, 100)];
		expect(Math.log(cold / hot) / (1 / 273.15 - 1 / 373.15)).toBeCloseTo(3900, 6);
	});

	// Pulled up by its own ohms at 25 degrees C it shows half the supply.
	it("on a pull-up of its own ohms it halves the supply at 25 degrees C", () => {
		const bench = new OnBench({
			parts: { BAT: "battery; volts=5; ohms=0.000001", R: "resistor; ohms=2252", B: "thermistor" },
			pins: { ...FIVE, "R.1": "a", "R.2": "b", "B.1": "a", "B.2": "b" },
			nets: ["BAT.+ R.1", "R.2 B.1", "BAT.- B.2 GND"],
			when: { cool: { B: "25" }, warm: { B: "90" }, unset: { BAT: "on" } },
		});
		expect(off(bench.volts("B.1", "B.2", "cool"), 2.5)).toBeLessThan(1e-4);
		expect(bench.volts("B.1", "B.2", "unset")).toBe(bench.volts("B.1", "B.2", "cool"));
		expect(bench.volts("B.1", "B.2", "warm")).toBeLessThan(0.6);
	});
});

describe("lambda sensor", () => {
	const bench = new OnBench({
		parts: {
			BAT: "battery; volts=12; ohms=0.000001",
			L: "lambda sensor; volts=0.7; ohms=5000",
			R: "resistor; ohms=5000",
		},
		pins: {
			...FIVE,
			"L.1": "signal",
			"L.2": "return",
			"L.3": "heater a",
			"L.4": "heater b",
			"R.1": "a",
			"R.2": "b",
		},
		nets: ["BAT.+ L.3", "BAT.- L.4 L.2 R.2 GND", "L.1 R.1"],
		when: { on: { BAT: "on" } },
	});

	// Its cell of 0.7 V behind 5000 ohm, loaded by 5000 ohm: 0.35 V.
	it("its cell is a source behind its own ohms", () => {
		expect(off(bench.volts("L.1", "L.2", "on"), 0.35)).toBeLessThan(0.01);
	});
	it("its heater draws by its ohms, apart from the cell", () => {
		expect(off(bench.amps("L.3", "L.4", "on"), 12 / 9)).toBeLessThan(1e-3);
	});
});

/** What a meter finds at each sort of pin of a running unit, and of one that sleeps. */
import { describe, expect, it } from "vitest";
import { OnBench, off } from "../bench.test-helper.js";

/** A unit on 12 V whose pin 3 has the role, with `load` ohms from it to ground or (`up`) to battery plus. */
function pin(role: string, states: readonly string[] = [], load?: { ohms: number; up?: boolean }) {
	return new OnBench({
		parts: {
			BAT: "battery; volts=12; ohms=0.000001",
			// Hardly any draw of its own, so that its ground does not rise.
			CU: "control unit; amps=0.0001",
			S: "switch; ohms=0.0001 | on:1-2; off:",
			...(load ? { R: `resistor; ohms=${load.ohms}` } : {}),
		},
		pins: {
			"BAT.+": "+",
			"BAT.-": "-",
			"S.1": "1",
			"S.2": "2",
			"CU.1": "supply",
			"CU.2": "ground",
			"CU.3": role,
			...(load ? { "R.1": "a", "R.2": "b" } : {}),
		},
		nets: [
			`BAT.+ S.1 P${load?.up ? " R.1" : ""}`,
			"S.2 CU.1",
			`CU.3 SIG${load ? (load.up ? " R.2" : " R.1") : ""}`,
			`BAT.- CU.2 GND${load && !load.up ? " R.2" : ""}`,
		],
		when: {
			run: { S: "on" },
			asleep: { S: "off" },
			dead: { BAT: "off" },
			...Object.fromEntries(states.map((state) => [state, { "CU.3": state }])),
		},
	});
}

const volts = (bench: OnBench, when = "run") => bench.volts("CU.3!pin", "CU.2!pin", when);

describe("sensor supply", () => {
	it("5 V without load, none asleep", () => {
		expect(volts(pin("sensor supply"))).toBeCloseTo(5, 3);
		expect(volts(pin("sensor supply"), "asleep")).toBeCloseTo(0, 6);
	});
	// 5 V behind 0.5 ohm on 99.5 ohm: 4.975 V.
	it("falls by its own ohms under load", () => {
		expect(off(volts(pin("sensor supply", [], { ohms: 99.5 })), 4.975)).toBeLessThan(1e-3);
	});
	it("other volts where the table says so", () => {
		expect(volts(pin("sensor supply; volts=8"))).toBeCloseTo(8, 3);
	});
});

it("sensor return is the unit's ground", () => {
	const bench = pin("sensor return");
	expect(bench.ohms("CU.3!pin", "CU.2!pin", "dead")).toBeCloseTo(0.05 + 0.002, 6);
});

describe("inputs", () => {
	it("pull-up: 5 V open, half of it on a resistor of its own size", () => {
		expect(volts(pin("input pull-up"))).toBeCloseTo(5, 3);
		expect(off(volts(pin("input pull-up; pullup_ohms=1000", [], { ohms: 1000 })), 2.5)).toBeLessThan(1e-3);
		expect(volts(pin("input pull-up"), "asleep")).toBeCloseTo(0, 6);
	});
	it("pull-down: nothing when open, a divider below a feed", () => {
		expect(volts(pin("input pull-down"))).toBeCloseTo(0, 5);
		expect(
			off(volts(pin("input pull-down; pulldown_ohms=30000", [], { ohms: 10000, up: true })), 9),
		).toBeLessThan(1e-3);
		expect(off(pin("input pull-down").ohms("CU.3!pin", "CU.2!pin", "dead"), 100000)).toBeLessThan(1e-6);
	});
	it("reference: a weak source", () => {
		expect(volts(pin("reference"))).toBeCloseTo(0.45, 4);
		// Behind 50 kohm, on 50 kohm: half.
		expect(off(volts(pin("reference", [], { ohms: 50000 })), 0.225)).toBeLessThan(1e-3);
	});
});

describe("low side", () => {
	const states = ["on", "off"];
	it("off, with its load open, shows its diagnosis voltage", () => {
		expect(volts(pin("low-side", states), "off")).toBeCloseTo(2.5, 3);
	});
	// 12 V through 24 ohm against 2.5 V behind 47 kohm: 12 V less 5 mV.
	it("off, with its load, shows the load's feed", () => {
		expect(off(volts(pin("low-side", states, { ohms: 24, up: true }), "off"), 12)).toBeLessThan(1e-3);
	});
	// 12 V x 0.202 / 24.202 = 0.1 V: its own 0.2 ohm and the 0.002 ohm of its ground.
	it("on, its load stands on its own few tenths of an ohm", () => {
		const bench = pin("low-side", states, { ohms: 24, up: true });
		expect(off(volts(bench, "on"), (12 * 0.202) / 24.202)).toBeLessThan(2e-3);
		expect(off(bench.amps("R.1", "R.2", "on"), 12 / 24.202)).toBeLessThan(2e-3);
	});
	it("asleep it is let go", () => {
		expect(off(volts(pin("low-side", states, { ohms: 24, up: true }), "asleep"), 12)).toBeLessThan(1e-3);
	});
	it("its diagnosis is the table's", () => {
		expect(volts(pin("low-side; diag_volts=3.4", states), "off")).toBeCloseTo(3.4, 3);
	});
});

describe("high side", () => {
	const states = ["on", "off"];
	// 12 V x 6 / 6.1 = 11.80 V.
	it("on, feeds its load from the unit's supply", () => {
		const bench = pin("high-side", states, { ohms: 6 });
		expect(off(volts(bench, "on"), (12 * 6) / 6.1)).toBeLessThan(2e-3);
		expect(off(bench.amps("R.1", "R.2", "on"), 12 / 6.1)).toBeLessThan(2e-3);
	});
	it("off or asleep, feeds nothing", () => {
		const bench = pin("high-side", states, { ohms: 6 });
		expect(Math.abs(volts(bench, "off"))).toBeLessThan(1e-5);
		expect(Math.abs(volts(bench, "asleep"))).toBeLessThan(1e-5);
	});
});

describe("bridge output", () => {
	const bench = pin("bridge", ["off", "high", "low"], { ohms: 12 });
	it("high, low and off", () => {
		expect(off(volts(bench, "high"), (12 * 12) / 12.15)).toBeLessThan(2e-3);
		expect(Math.abs(volts(bench, "low"))).toBeLessThan(1e-5);
		expect(Math.abs(volts(bench, "off"))).toBeLessThan(1e-5);
	});
	it("low, sinks what is fed to it", () => {
		const sink = pin("bridge", ["low"], { ohms: 12, up: true });
		expect(off(volts(sink, "low"), (12 * 0.152) / 12.152)).toBeLessThan(2e-3);
	});
});

// Levels of ISO 11898-2: outside/bus-ends.test.ts.
describe("bus lines", () => {
	it("recessive 2.5 V, dominant apart, nothing asleep", () => {
		const high = pin("bus high", ["recessive", "dominant"]);
		const low = pin("bus low", ["recessive", "dominant"]);
		expect([volts(high, "recessive"), volts(low, "recessive")].map((v) => v.toFixed(2))).toEqual([
			"2.50",
			"2.50",
		]);
		expect([volts(high, "dominant"), volts(low, "dominant")].map((v) => v.toFixed(2))).toEqual([
			"4.00",
			"1.00",
		]);
		expect(volts(high, "asleep")).toBeCloseTo(0, 6);
	});
	it("by ohmmeter each line is its input resistance", () => {
		expect(off(pin("bus high").ohms("CU.3!pin", "CU.2!pin", "dead"), 25000)).toBeLessThan(1e-6);
	});
});

it("an unused pin is open", () => {
	const bench = pin("unused");
	expect(bench.volts("CU.3", "CU.2", "run")).toBeNaN();
});

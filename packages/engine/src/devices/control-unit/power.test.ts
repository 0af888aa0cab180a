/** When a control unit is asleep, awake or powered. */
import { describe, expect, it } from "vitest";
import { OnBench, off } from "../bench.test-helper.js";

const UNIT = "control unit; min_volts=6; amps=0.24";

/** Its own main relay K feeds it: terminal 15 wakes it, its output 3 pulls the relay in. */
const mainRelay = new OnBench({
	parts: { BAT: "battery; volts=12", CU: UNIT, K: "relay", S: "switch | off:; run:1-2" },
	pins: {
		"BAT.+": "+",
		"BAT.-": "-",
		"S.1": "1",
		"S.2": "2",
		"K.30": "30",
		"K.87": "87",
		"K.86": "86",
		"K.85": "85",
		"CU.1": "supply",
		"CU.2": "ground",
		"CU.3": "low-side",
		"CU.4": "wake",
		"CU.5": "sensor supply",
	},
	nets: ["BAT.+ S.1 K.30 K.86 P", "S.2 CU.4", "K.85 CU.3", "K.87 CU.1", "CU.5 T", "BAT.- CU.2 GND"],
	when: {
		parked: { S: "off", "CU.3": "on" },
		woken: { S: "run", "CU.3": "off" },
		run: { S: "run", "CU.3": "on" },
	},
});

describe("a unit that feeds itself through its main relay", () => {
	it("parked: asleep, whatever its outputs are meant to do", () => {
		expect(mainRelay.state("CU", "parked")).toBe("asleep");
		expect(mainRelay.state("K", "parked")).toBe("released");
		expect(mainRelay.volts("CU.5", "CU.2", "parked")).toBeCloseTo(0, 6);
	});

	it("woken without drawing the relay: awake, no supply yet", () => {
		expect(mainRelay.state("CU", "woken")).toBe("awake");
		expect(mainRelay.volts("CU.1", "CU.2", "woken")).toBeLessThan(0.1);
		expect(mainRelay.volts("CU.5", "CU.2", "woken")).toBeLessThan(0.1);
	});

	it("run: its low side works from the wake line alone and so brings its own supply", () => {
		expect(mainRelay.state("CU", "run")).toBe("powered");
		expect(mainRelay.state("K", "run")).toBe("pulled in");
		expect(mainRelay.volts("CU.5", "CU.2", "run")).toBeCloseTo(5, 2);
	});

	it("its own draw flows by its first supply, 0.24 A at 12 V", () => {
		expect(off(mainRelay.amps("K.30", "K.87", "run"), 0.24)).toBeLessThan(0.05);
	});
});

/** Fed through `ohms`, no wake line: its draw of 1.2 A at 12 V is 10 ohm. */
function fed(ohms: number) {
	return new OnBench({
		parts: {
			BAT: "battery; volts=12",
			R: `resistor; ohms=${ohms}`,
			CU: "control unit; min_volts=6; amps=1.2",
		},
		pins: {
			"BAT.+": "+",
			"BAT.-": "-",
			"R.1": "a",
			"R.2": "b",
			"CU.1": "supply",
			"CU.2": "ground",
			"CU.3": "sensor supply",
		},
		nets: ["BAT.+ R.1", "R.2 CU.1", "BAT.- CU.2 GND", "CU.3 T"],
		when: { on: { BAT: "on" }, off: { BAT: "off" } },
	});
}

describe("a unit without a wake line", () => {
	it("runs when fed, sleeps when not", () => {
		expect(fed(0.1).state("CU", "on")).toBe("powered");
		expect(fed(0.1).state("CU", "off")).toBe("asleep");
	});

	// 12 V x 10 / (10 + R): 6.67 V at 8 ohm, 5.45 V at 12 ohm.
	it("needs its least volts", () => {
		expect(fed(8).state("CU", "on")).toBe("powered");
		expect(fed(12).state("CU", "on")).toBe("asleep");
	});
});

it("with its ground lifted it does not run, and its ground pin rises", () => {
	const bench = new OnBench({
		parts: { BAT: "battery; volts=12", CU: UNIT, X: "connector" },
		pins: { "BAT.+": "+", "BAT.-": "-", "CU.1": "supply", "CU.2": "ground @X 1" },
		nets: ["BAT.+ CU.1", "BAT.- CU.2 GND"],
		when: { on: { X: "mated" }, lifted: { X: "unmated" } },
	});
	expect(bench.state("CU", "on")).toBe("powered");
	expect(bench.state("CU", "lifted")).toBe("asleep");
	expect(bench.volts("CU.2!pin", "GND", "lifted")).toBeCloseTo(12, 3);
});

it("either of two grounds keeps it running", () => {
	const bench = new OnBench({
		parts: { BAT: "battery; volts=12", CU: UNIT, X: "connector", Y: "connector" },
		pins: { "BAT.+": "+", "BAT.-": "-", "CU.1": "supply", "CU.2": "ground @X 1", "CU.3": "ground @Y 1" },
		nets: ["BAT.+ CU.1", "BAT.- CU.2 CU.3 GND"],
		when: { one: { X: "unmated" }, other: { Y: "unmated" }, none: { X: "unmated", Y: "unmated" } },
	});
	expect(["one", "other", "none"].map((when) => bench.state("CU", when))).toEqual([
		"powered",
		"powered",
		"asleep",
	]);
});

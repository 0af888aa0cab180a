/** Battery and generator. Numbers in the comments are worked out by hand. */
import { describe, expect, it } from "vitest";
import { OnBench, off } from "./bench.test-helper.js";

const bench = new OnBench({
	parts: {
		BAT: "battery; volts=12; ohms=0.1",
		GEN: "generator; volts=14; ohms=0.1",
		R: "resistor; ohms=5.9",
		S: "switch | off:; on:1-2",
	},
	pins: {
		"BAT.+": "+",
		"BAT.-": "-",
		"GEN.B": "B+",
		"GEN.M": "-",
		"R.1": "a",
		"R.2": "b",
		"S.1": "1",
		"S.2": "2",
	},
	nets: ["BAT.+ GEN.B S.1 P", "S.2 R.1", "BAT.- GEN.M R.2 GND"],
	when: {
		rest: { S: "off" },
		load: { S: "on" },
		charging: { GEN: "on", S: "off" },
		both: { GEN: "on", S: "on" },
		dead: { BAT: "off", S: "on" },
		limping: { BAT: "off", GEN: "on", S: "on" },
	},
});

describe("battery", () => {
	it("shows its own volts without load", () => {
		expect(bench.volts("BAT.+", "BAT.-", "rest")).toBeCloseTo(12, 6);
	});

	// 12 V / (0.1 + 5.9 ohm) = 2 A, so 11.8 V at the posts; the switch's 0.02 ohm and the wires take a little.
	it("falls by its own resistance under load", () => {
		expect(off(bench.volts("BAT.+", "BAT.-", "load"), 11.8)).toBeLessThan(1e-3);
		expect(off(bench.amps("BAT.-", "BAT.+", "load"), 2)).toBeLessThan(6e-3);
	});

	it("disconnected it leaves its posts open to each other", () => {
		expect(off(bench.ohms("BAT.+", "BAT.-", "dead"), 5.92)).toBeLessThan(2e-3);
		expect(bench.volts("BAT.+", "BAT.-", "dead")).toBeCloseTo(0, 9);
	});
});

describe("generator", () => {
	it("at rest blocks: it neither gives nor takes", () => {
		expect(bench.amps("GEN.B", "GEN.M", "load")).toBe(0);
	});

	// (14 - 12) V / 0.2 ohm = 10 A into the battery; 13 V on the rail.
	it("charges the battery", () => {
		expect(off(bench.amps("BAT.+", "BAT.-", "charging"), 10)).toBeLessThan(0.015);
		expect(off(bench.volts("BAT.+", "BAT.-", "charging"), 13)).toBeLessThan(2e-3);
	});

	// Alone: 14 V / 6 ohm = 2.333 A.
	it("carries the load alone", () => {
		expect(off(bench.amps("R.1", "R.2", "limping"), 14 / 6)).toBeLessThan(6e-3);
	});

	// Both behind 0.1 ohm: 13 V behind 0.05 ohm, on 5.92 ohm.
	it("shares it with the battery", () => {
		expect(off(bench.amps("R.1", "R.2", "both"), 13 / 5.97)).toBeLessThan(2e-3);
	});
});

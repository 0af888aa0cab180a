import { describe, expect, it } from "vitest";
import { OnBench, off } from "./bench.test-helper.js";

/** Terminal 50 behind `series` ohms; the battery behind `own` ohms. */
function starterBehind(series: number, own = 0.01) {
	return new OnBench({
		parts: {
			BAT: `battery; volts=12; ohms=${own}`,
			R: `resistor; ohms=${series}`,
			M: "starter; solenoid_ohms=1; motor_ohms=0.05; pull_in_volts=7",
			S: "switch; ohms=0.0001 | off:; on:1-2",
		},
		pins: {
			"BAT.+": "+",
			"BAT.-": "-",
			"R.1": "a",
			"R.2": "b",
			"S.1": "1",
			"S.2": "2",
			"M.30": "30",
			"M.50": "50",
			"M.31": "31",
		},
		nets: ["BAT.+ M.30 S.1 P", "S.2 R.1", "R.2 M.50", "BAT.- M.31 GND"],
		when: { rest: { S: "off" }, start: { S: "on" }, apart: { BAT: "off" } },
	});
}

describe("starter", () => {
	it("rests without its control voltage: terminal 30 draws nothing", () => {
		const bench = starterBehind(0.1);
		expect(bench.state("M", "rest")).toBe("at rest");
		expect(bench.amps("M.30", "M.31", "rest")).toBe(0);
		expect(off(bench.ohms("M.50!pin", "M.31!pin", "apart"), 1)).toBeLessThan(1e-9);
	});

	// Cranking: 12 V behind 0.01 ohm on 0.05 ohm: 200 A, 10 V at the posts, less what the solenoid takes.
	it("cranks once its solenoid has pulled in", () => {
		const bench = starterBehind(0.1);
		expect(bench.state("M", "start")).toBe("cranking");
		expect(off(bench.volts("BAT.+", "BAT.-", "start"), 10)).toBeLessThan(0.02);
		expect(off(bench.amps("M.30", "M.31", "start"), 200)).toBeLessThan(0.05);
	});

	// 12 V x 1 / (1 + 1) = 6 V: below the pull-in voltage of 7 V.
	it("stays at rest on too weak a terminal 50", () => {
		expect(starterBehind(1).state("M", "start")).toBe("at rest");
	});

	// A weak battery: 12 V x 0.05 / (0.05 + 0.05) = 6 V while cranking, below pull-in but above a third of it.
	it("holds in on a sagging battery", () => {
		const bench = starterBehind(0.1, 0.05);
		expect(bench.state("M", "start")).toBe("cranking");
		expect(bench.volts("M.50", "M.31", "start")).toBeLessThan(7);
	});

	// 12 V x 0.05 / (0.05 + 0.4) = 1.3 V: it chatters, as on a flat battery.
	it("chatters on a flat one, and the answer names it", () => {
		expect(() => starterBehind(0.1, 0.4).state("M", "start")).toThrow(
			"does not settle: M keeps switching to and fro",
		);
	});

	it("does not pull in the wrong way round", () => {
		const { spec } = starterBehind(0.1).car.circuit("delivered").standing("start").automata[0]!;
		expect(spec.next(0, [-12])).toBe(0);
	});
});

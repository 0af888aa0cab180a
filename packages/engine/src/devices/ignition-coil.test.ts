import { expect, it } from "vitest";
import { OnBench, off } from "./bench.test-helper.js";

const bench = new OnBench({
	parts: { BAT: "battery; volts=12; ohms=0.000001", T: "ignition coil; ohms=0.75; input_ohms=1000" },
	pins: { "BAT.+": "+", "BAT.-": "-", "T.1": "supply", "T.2": "ground", "T.3": "signal" },
	nets: ["BAT.+ T.1", "BAT.- T.2 GND", "T.3 S"],
	when: { rest: { T: "off" }, charging: { T: "on" }, apart: { BAT: "off" } },
});

it("at rest its driver takes a few milliamperes", () => {
	expect(bench.amps("T.1", "T.2", "rest")).toBeGreaterThan(0.001);
	expect(bench.amps("T.1", "T.2", "rest")).toBeLessThan(0.01);
});

// 12 V / 0.75 ohm = 16 A.
it("while charging its primary draws battery volts over its ohms", () => {
	expect(off(bench.amps("T.1", "T.2", "charging"), 16)).toBeLessThan(0.01);
});

it("its signal input lies on ground through its own ohms", () => {
	expect(off(bench.ohms("T.3!pin", "T.2!pin", "apart"), 1000)).toBeLessThan(1e-9);
});

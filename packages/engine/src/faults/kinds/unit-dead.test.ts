import { expect, it } from "vitest";
import { operate } from "../../circuit/index.js";
import { OnBench } from "../../devices/bench.test-helper.js";
import { unitDead } from "./devices.js";

/** The first condition, in which the unit drives nothing, must not decide what a dead unit lets go. */
it("a dead unit drives nothing in any condition", () => {
	const bench = new OnBench({
		parts: {
			BAT: "battery; volts=12",
			CU: "control unit",
			H: "heater; ohms=12",
			M: "motor; ohms=12",
			R: "relay",
		},
		pins: {
			"BAT.+": "+",
			"BAT.-": "-",
			"CU.1": "supply",
			"CU.2": "ground",
			"CU.3": "high-side",
			"CU.4": "bridge",
			"CU.5": "low-side",
			"CU.6": "sensor supply",
			"H.1": "a",
			"H.2": "b",
			"M.1": "a",
			"M.2": "b",
			"R.85": "85",
			"R.86": "86",
			"R.30": "30",
			"R.87": "87",
		},
		nets: [
			"BAT.+ CU.1 R.86 P",
			"BAT.- CU.2 H.2 M.2 GND",
			"CU.3 H.1",
			"CU.4 M.1",
			"CU.5 R.85",
			"CU.6 S",
			"R.30 A",
			"R.87 B",
		],
		when: { off: { BAT: "off" }, on: { "CU.3": "on", "CU.4": "high", "CU.5": "on" } },
	});
	const circuit = bench.car.circuit("delivered");
	const [fault] = unitDead.list({ circuit, loom: circuit.loom } as Parameters<typeof unitDead.list>[0]);
	const { change } = fault!.patterns[0]!;
	const volts = (name: string, point: { readonly volts: ArrayLike<number> }) =>
		point.volts[circuit.node(name)!]!;
	const alive = operate(circuit, circuit.standing("on"));
	const dead = operate(circuit, circuit.standing("on"), { change });
	for (const name of ["H.1", "M.1"]) {
		expect(volts(name, alive)).toBeGreaterThan(11);
		expect(Math.abs(volts(name, dead))).toBeLessThan(0.01);
	}
	expect(volts("R.85", alive)).toBeLessThan(0.1);
	expect(volts("R.85", dead)).toBeGreaterThan(11);
	expect(volts("CU.6", alive)).toBeCloseTo(5, 2);
	expect(Math.abs(volts("CU.6", dead))).toBeLessThan(0.01);
});

/** Parts of half and of twice the ohms, by hand. */
import { expect, it } from "vitest";
import { operate } from "../../circuit/index.js";
import { OnBench } from "../../devices/bench.test-helper.js";
import type { FaultContext } from "../types.js";
import { wrongValue } from "./wrong-value.js";

const bench = new OnBench({
	parts: { BAT: "battery; volts=12", R1: "resistor; ohms=1000", R2: "resistor; ohms=1000" },
	pins: { "BAT.+": "+", "BAT.-": "-", "R1.a": "a", "R1.b": "b", "R2.a": "a", "R2.b": "b" },
	nets: ["BAT.+ R1.a P", "R1.b R2.a M", "R2.b BAT.- GND"],
	when: { on: { BAT: "on" } },
});
const circuit = bench.car.circuit("delivered");
const nothing = new Map();
const touched = {
	...{ contacts: nothing, wires: nothing, ends: nothing },
	...{ joints: nothing, connectors: nothing, parts: nothing },
};
const context: FaultContext = { circuit, loom: circuit.loom, touched, steps: new Map() };
const faults = wrongValue.list(context);

it("each resistor may be another", () => {
	expect(faults.map(({ id }) => id)).toEqual(["wrong value:R1", "wrong value:R2"]);
});

it("1000 over 1000 ohm halves 12 V; over 2000 it gives two thirds, over 500 one third", () => {
	const at = (k?: number) => {
		const change = k === undefined ? {} : { change: faults[1]!.patterns[k]!.change };
		const { volts } = operate(circuit, circuit.standing("on"), change);
		return volts[circuit.node("R2.a")!]! - volts[circuit.node("BAT.-")!]!;
	};
	expect(at()).toBeCloseTo(6, 2);
	expect(at(0)).toBeCloseTo(8, 2);
	expect(at(1)).toBeCloseTo(4, 2);
});

it("one that hands fitted is the more suspect", () => {
	const fitted = wrongValue.list({ ...context, touched: { ...touched, parts: new Map([["R1", ["1"]]]) } });
	expect(fitted[0]!.prior).toBeGreaterThan(100 * fitted[1]!.prior);
});

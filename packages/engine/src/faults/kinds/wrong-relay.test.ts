/** Another relay in the socket: by hand, on a bench. */
import { expect, it } from "vitest";
import { operate } from "../../circuit/index.js";
import { OnBench } from "../../devices/bench.test-helper.js";
import type { FaultContext } from "../types.js";
import { wrongRelay } from "./wrong-relay.js";

const bench = new OnBench({
	parts: {
		BAT: "battery; volts=12; ohms=0.01",
		K: "relay; coil_ohms=85",
		H: "heater; ohms=12",
		L: "heater; ohms=12",
		R: "resistor; ohms=1",
	},
	pins: {
		"BAT.+": "+",
		"BAT.-": "-",
		"K.85": "85",
		"K.86": "86",
		"K.30": "30",
		"K.87": "87",
		"K.87a": "87a",
		"H.1": "a",
		"H.2": "b",
		"L.1": "a",
		"L.2": "b",
		"R.1": "a",
		"R.2": "b",
	},
	nets: ["BAT.+ K.86 K.30 P", "K.87 H.1 M", "K.87a L.1 B", "K.85 R.1 C", "R.2 BAT.- H.2 L.2 GND"],
	when: { on: { BAT: "on" } },
});
const circuit = bench.car.circuit("delivered");
const nothing = new Map();
const touched = {
	...{ contacts: nothing, wires: nothing, ends: nothing },
	...{ joints: nothing, connectors: nothing, parts: nothing },
};
const context: FaultContext = { circuit, loom: circuit.loom, touched, steps: new Map() };
const [fault, ...more] = wrongRelay.list(context);

/** Volts of the load on the make contact, of that on the break contact, and behind the coil. */
function volts(pattern?: number): number[] {
	const change = pattern === undefined ? {} : { change: fault!.patterns[pattern]!.change };
	const { volts } = operate(circuit, circuit.standing("on"), change);
	return ["H.1", "L.1", "R.1"].map((name) => volts[circuit.node(name)!]! - volts[circuit.node("BAT.-")!]!);
}

it("one relay, its ways weighted to 1", () => {
	expect(more).toEqual([]);
	expect(fault!.patterns.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 12);
});

it("the right one pulls in: 12 V x 1 / 86 behind the coil", () => {
	const [made, broken, behind] = volts();
	expect(made).toBeGreaterThan(11.5);
	expect(broken).toBeCloseTo(0, 3);
	expect(behind).toBeCloseTo(12 / 86, 2);
});

it("one for twice the voltage stays at rest: 12 V x 1 / 341", () => {
	const [made, broken, behind] = volts(0);
	expect(made).toBeCloseTo(0, 3);
	expect(broken).toBeGreaterThan(11.5);
	expect(behind).toBeCloseTo(12 / 341, 2);
});

it("a diode across the coil the wrong way round feeds what should sink the coil's current", () => {
	expect(volts(1)[2]).toBeGreaterThan(10);
});

it("without a break contact nothing is fed at rest, and the make contact works", () => {
	const [made, broken] = volts(2);
	expect(made).toBeGreaterThan(11.5);
	expect(broken).toBeCloseTo(0, 3);
	const { change } = fault!.patterns[2]!;
	const rest = circuit.branches.findIndex((b) => b.owner.element === "break contact");
	expect(change.branches).toEqual([{ branch: rest, siemens: 0 }]);
});

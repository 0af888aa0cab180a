import { describe, expect, it } from "vitest";
import { CircuitError, operate } from "../circuit/index.js";
import { OnBench, off } from "./bench.test-helper.js";

const PINS = { "K1.86": "86", "K1.85": "85", "K1.30": "30", "K1.87": "87", "K1.87a": "87a" };
const BATTERY = { "BAT.+": "+", "BAT.-": "-" };

/** Coil behind `series` ohms on 12 V; contact 30 on the battery, a 12 ohm load on 87, another on 87a. */
function relayBehind(series: number, battery = 0.001, load = 12): OnBench {
	return new OnBench({
		parts: {
			BAT: `battery; volts=12; ohms=${battery}`,
			K1: "relay; coil_ohms=100; pull_in_volts=8; drop_out_volts=2",
			R: `resistor; ohms=${series}`,
			L: `resistor; ohms=${load}`,
			La: "resistor; ohms=12",
		},
		pins: { ...BATTERY, ...PINS, "R.1": "a", "R.2": "b", "L.1": "a", "L.2": "b", "La.1": "a", "La.2": "b" },
		nets: ["BAT.+ R.1 K1.30 P", "R.2 K1.86 C", "K1.87 L.1 M", "K1.87a La.1 Ra", "BAT.- K1.85 L.2 La.2 GND"],
		when: {
			on: { BAT: "on" },
			off: { BAT: "off" },
			out: { K1: "pulled" },
			hand: { BAT: "off", K1: "pulled" },
		},
	});
}

describe("coil and contacts", () => {
	// 12 V x 100 / (100 + 40) = 8.57 V: above pull-in.
	it("pulls in above its pull-in voltage and moves the load from 87a to 87", () => {
		const bench = relayBehind(40);
		expect(bench.state("K1", "on")).toBe("pulled in");
		expect(off(bench.volts("K1.86", "K1.85", "on"), (12 * 100) / 140)).toBeLessThan(1e-3);
		expect(off(bench.amps("L.1", "L.2", "on"), 1)).toBeLessThan(2e-3);
		expect(bench.volts("K1.87a", "GND", "on")).toBeCloseTo(0, 9);
	});

	// 12 V x 100 / (100 + 60) = 7.5 V: below it.
	it("stays out below it, though that would hold it in", () => {
		const bench = relayBehind(60);
		expect(bench.state("K1", "on")).toBe("released");
		expect(off(bench.amps("La.1", "La.2", "on"), 1)).toBeLessThan(2e-3);
		expect(bench.volts("K1.87", "GND", "on")).toBeCloseTo(0, 9);
	});

	it("without current: coil ohms, rest contact closed, make contact open", () => {
		const bench = relayBehind(40);
		// The coil, and round it 40 ohm, the rest contact and its 12 ohm load: 100 x 52 / 152.
		expect(off(bench.ohms("K1.86!pin", "K1.85!pin", "off"), (100 * 52) / 152)).toBeLessThan(1e-3);
		expect(bench.ohms("K1.87", "K1.30", "off")).toBeGreaterThan(12);
		expect(bench.ohms("K1.30!pin", "K1.87a!pin", "off")).toBeCloseTo(0.003, 6);
	});

	it("pulled out of its socket everything there is open", () => {
		const bench = relayBehind(40);
		expect(bench.volts("K1.87a", "GND", "out")).toBeCloseTo(0, 9);
		expect(bench.volts("K1.86", "GND", "out")).toBeCloseTo(12, 6);
		expect(bench.ohms("K1.86", "K1.86!pin", "hand")).toBeNaN();
		expect(off(bench.ohms("K1.86!pin", "K1.85!pin", "hand"), 100)).toBeLessThan(1e-9);
	});

	it("does not mind which way its coil is fed", () => {
		const bench = new OnBench({
			parts: { BAT: "battery; volts=12", K1: "relay" },
			pins: { ...BATTERY, ...PINS },
			nets: ["BAT.+ K1.85 K1.30", "BAT.- K1.86 GND", "K1.87 M", "K1.87a A"],
			when: { on: { BAT: "on" } },
		});
		expect(bench.state("K1", "on")).toBe("pulled in");
		expect(bench.volts("K1.87", "GND", "on")).toBeCloseTo(12, 2);
	});
});

describe("hysteresis", () => {
	// Pulled in, the load sags the supply: 12 V x 2 / (2 + 2) = 6 V, below pull-in 8 V and above drop-out 2 V.
	it("holds itself in where its own load sags the supply", () => {
		const bench = relayBehind(0.1, 2, 2);
		expect(bench.state("K1", "on")).toBe("pulled in");
		const coil = bench.volts("K1.86", "K1.85", "on");
		expect(coil).toBeGreaterThan(5);
		expect(coil).toBeLessThan(8);
	});

	// 12 V x 0.2 / (0.2 + 2) = 1.1 V, below drop-out: in, out, in ... the answer names the relay.
	it("sagging below drop-out it buzzes: reported by its name", () => {
		const bench = relayBehind(0.1, 2, 0.2);
		expect(() => bench.state("K1", "on")).toThrow(CircuitError);
		expect(() => bench.state("K1", "on")).toThrow("does not settle: K1 keeps switching to and fro");
	});

	it("moves at the two voltages and nowhere between", () => {
		const { spec } = relayBehind(40).car.circuit("delivered").standing("on").automata[0]!;
		// It looks at the last hundredth of its coil.
		const after = (state: number, volts: number) => spec.states[spec.next(state, [volts / 100])];
		expect([after(0, 7.99), after(0, 8), after(0, -8)]).toEqual(["released", "pulled in", "pulled in"]);
		expect([after(1, 2), after(1, -2), after(1, 1.99)]).toEqual(["pulled in", "pulled in", "released"]);
	});
});

it("a relay that feeds its own coil through its rest contact is a buzzer", () => {
	const bench = new OnBench({
		parts: { BAT: "battery; volts=12", K7: "relay" },
		pins: Object.fromEntries(
			Object.entries({ ...BATTERY, ...PINS }).map(([id, role]) => [id.replace("K1", "K7"), role]),
		),
		nets: ["BAT.+ K7.30", "K7.87a K7.86", "BAT.- K7.85 GND", "K7.87 M"],
		when: { on: { BAT: "on" }, off: { BAT: "off" } },
	});
	let error: unknown;
	try {
		bench.volts("K7.86", "K7.85", "on");
	} catch (thrown) {
		error = thrown;
	}
	expect(error).toBeInstanceOf(CircuitError);
	expect((error as CircuitError).where).toEqual(["K7"]);
	expect(off(bench.ohms("K7.30", "K7.85", "off"), 85)).toBeLessThan(1e-3);
});

it("with its coil open inside it stays released, whatever stands at its pins", () => {
	const bench = relayBehind(0.1);
	const circuit = bench.car.circuit("delivered");
	const coil = circuit.branchesOf.get("K1")!.find((k) => circuit.branches[k]!.owner.element === "coil")!;
	const point = operate(circuit, circuit.standing("on"), {
		change: { branches: [{ branch: coil, siemens: 0 }], added: [] },
	});
	expect(point.standing.automata[0]!.spec.states[point.states[0]!]).toBe("released");
});

/** Outputs at their limit: drivers that shut down, sensor supplies that fold back. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Circuit, operate } from "../../circuit/index.js";
import { demoCar } from "../../test-support/demo.test-helper.js";
import { OnBench, off } from "../bench.test-helper.js";
import { isLimited } from "./limit.js";

/** A unit on a 12 V battery whose pin 3 has the role; what hangs on the net SIG is said in further parts and nets. */
function pin(
	role: string,
	parts: Record<string, string>,
	pins: Record<string, string>,
	nets: readonly string[],
): OnBench {
	return new OnBench({
		parts: { BAT: "battery; volts=12; ohms=0.000001", CU: "control unit; amps=0.0001", ...parts },
		pins: { "BAT.+": "+", "BAT.-": "-", "CU.1": "supply", "CU.2": "ground", "CU.3": role, ...pins },
		nets: ["BAT.+ CU.1 P", "BAT.- CU.2 GND", "CU.3 SIG", ...nets],
		when: role.startsWith("sensor")
			? { on: { BAT: "on" } }
			: { on: { "CU.3": "on" }, off: { "CU.3": "off" } },
	});
}

/** What is between SIG and battery plus (`P`) or ground (`GND`). */
const loaded = (role: string, part: string, to: "P" | "GND") =>
	pin(role, { R: part }, { "R.1": "a", "R.2": "b" }, ["R.1 SIG", `R.2 ${to}`]);

const volts = (bench: OnBench, when = "on") => bench.volts("CU.3!pin", "CU.2!pin", when);

/** State of pin 3's own automaton. */
function outputState(bench: OnBench, when = "on"): string {
	const circuit = bench.car.circuit("delivered");
	const { standing, states } = operate(circuit, circuit.standing(when));
	const at = standing.automata.findIndex(({ spec }) => spec.element.startsWith("CU.3 "));
	return standing.automata[at]!.spec.states[states[at]!]!;
}

describe("low side, made for 3 A", () => {
	// 12 V / (4.2 + 0.2) ohm = 2.73 A; 12 V / (3.2 + 0.2) ohm = 3.53 A.
	it("carries what is under its limit and shuts down over it", () => {
		const under = loaded("low-side", "resistor; ohms=4.2", "P");
		expect(outputState(under)).toBe("powered");
		expect(off(under.amps("R.2", "R.1", "on"), 12 / 4.4)).toBeLessThan(5e-3);
		const over = loaded("low-side", "resistor; ohms=3.2", "P");
		expect(outputState(over)).toBe("powered, limited");
		// Only its diagnosis, 2.5 V behind 47 kohm, is left on the pin.
		expect(volts(over)).toBeCloseTo(12, 2);
		expect(over.amps("R.2", "R.1", "on")).toBeCloseTo((12 - 2.5) / 47000, 5);
	});

	it("shorted to the feed, the pin reads the feed and the battery is spared", () => {
		const short = loaded("low-side", "switch; ohms=0.001 | on:a-b", "P");
		expect(volts(short)).toBeCloseTo(12, 3);
		expect(short.volts("BAT.+", "BAT.-", "on")).toBeCloseTo(12, 3);
	});

	it("its limit is the table's, and off it has none", () => {
		expect(outputState(loaded("low-side; limit_amps=5", "resistor; ohms=3.2", "P"))).toBe("powered");
		expect(outputState(loaded("low-side; limit_amps=0.01", "resistor; ohms=3.2", "P"), "off")).toBe("off");
	});
});

describe("high side, made for 6 A", () => {
	it("shorted to ground it shuts down: 0 V", () => {
		const short = loaded("high-side", "switch; ohms=0.001 | on:a-b", "GND");
		expect(outputState(short)).toBe("powered, limited");
		expect(Math.abs(volts(short))).toBeLessThan(1e-6);
	});

	// A 21 W lamp: cold 0.868 ohm, 12.4 A; hot 8.68 ohm, 1.37 A. A 100 W lamp: hot 1.82 ohm, 6.2 A.
	it("stands the first rush of a cold lamp, but not a lamp that is too large", () => {
		const lamp = loaded("high-side", "lamp; watts=21", "GND");
		expect(outputState(lamp)).toBe("powered");
		expect(volts(lamp)).toBeGreaterThan(11.8);
		expect(outputState(loaded("high-side", "lamp; watts=100", "GND"))).toBe("powered, limited");
	});
});

describe("sensor supply, 5 V made for 0.1 A", () => {
	/** A sensor at half travel on the supply, its signal on net S, and a load of `ohms` beside it. */
	const beside = (ohms: number, to: "P" | "GND" = "GND", values = "") =>
		pin(
			`sensor supply${values}`,
			{ B: "potentiometer; ohms=5000", R: `resistor; ohms=${ohms}` },
			{ "B.1": "supply", "B.2": "return", "B.3": "signal", "R.1": "a", "R.2": "b" },
			["B.1 R.1 SIG", "B.3 S", "B.2 GND", `R.2 ${to}`],
		);

	it("holds 5 V up to its limit", () => {
		// 5 V / 60.5 ohm = 83 mA.
		expect(off(volts(beside(60)), (5 * 60) / 60.5)).toBeLessThan(2e-3);
	});

	it("shorted reads near 0 V, and the other sensor on it reads low", () => {
		const short = beside(0.01);
		expect(outputState(short)).toBe("powered, limited");
		expect(volts(short)).toBeLessThan(0.001);
		expect(short.volts("B.3", "CU.2", "on")).toBeLessThan(0.001);
	});

	// Folded back it is 5 V behind 1000 ohm: on 40 ohm 0.19 V.
	it("over its limit falls to a weak source", () => {
		expect(off(volts(beside(40)), (5 * 40) / 1040)).toBeLessThan(0.02);
		expect(off(volts(beside(40, "GND", "; fold_ohms=200")), (5 * 40) / 240)).toBeLessThan(0.02);
		expect(outputState(beside(40, "GND", "; limit_amps=0.2"))).toBe("powered");
	});

	it("shorted to the battery it lets itself be lifted", () => {
		const lifted = beside(0.01, "P");
		expect(outputState(lifted)).toBe("powered, limited");
		expect(volts(lifted)).toBeCloseTo(12, 2);
	});
});

it("once limited it stays so, asleep or awake, whatever is watched; below, one round over is forgiven", () => {
	const bench = loaded("low-side", "resistor; ohms=100", "P");
	const circuit = bench.car.circuit("delivered");
	const { spec } = circuit.standing("on").automata.find(({ spec }) => spec.element === "CU.3 output")!;
	const some = fc.double({ min: -15, max: 15, noNaN: true });
	fc.assert(
		fc.property(fc.nat({ max: spec.states.length - 1 }), some, some, (state, across, supply) => {
			const next = spec.next(state, [across, supply]);
			const power = supply >= 6 ? "powered" : "asleep";
			expect(spec.states[next]!.split(",")[0]).toBe(power);
			const over = Math.abs(spec.table[state]![0]!.siemens * across) > 3;
			const counted = spec.states[state]!.includes("over");
			expect(isLimited(spec, next)).toBe(isLimited(spec, state) || (over && counted));
		}),
		{ seed: 3 },
	);
});

describe.each(["small", "main"] as const)("the %s demo car", (name) => {
	const each = (circuit: Circuit) =>
		[...circuit.loom.conditions.keys()].map((condition) => circuit.standing(condition));

	it.each(["delivered", "converted"] as const)("%s: no output is limited while it is sound", (which) => {
		const circuit = demoCar(name).circuit(which);
		for (const standing of each(circuit)) {
			const { states } = operate(circuit, standing);
			const limited = standing.automata.filter(({ spec }, k) => isLimited(spec, states[k]!));
			expect(limited.map(({ spec }) => spec.element)).toEqual([]);
		}
	});

	it("no branch belongs to two automata, and every condition has the same automata in the same order", () => {
		const standings = each(demoCar(name).circuit("converted"));
		const names = standings.map(({ automata }) => automata.map(({ spec }) => `${spec.part} ${spec.element}`));
		for (const list of names) expect(list).toEqual(names[0]);
		for (const { automata } of standings) {
			const owned = automata.flatMap(({ branches }) => branches);
			expect(new Set(owned).size).toBe(owned.length);
		}
	});
});

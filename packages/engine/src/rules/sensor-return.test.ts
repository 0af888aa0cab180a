import { expect, test } from "vitest";
import { sensorReturn } from "./sensor-return.js";
import {
	battery,
	benchCircuit,
	grounded,
	joint,
	part,
	unit,
	wire,
} from "./support/bench-loom.test-helper.js";

const ecu = unit("ECU", "control unit", {
	A1: "supply",
	A2: "ground",
	A3: "input pull-up",
	A4: "sensor return",
});
const tcu = unit("TCU", "control unit", { B1: "supply", B2: "ground", B4: "sensor return" });

function car(returnWire: ReturnType<typeof wire>, units = [ecu, tcu]) {
	return benchCircuit({
		parts: [battery, ...units, part("T1", "thermistor", ["a", "b"], { label: "coolant sensor" })],
		joints: [joint("G1", "ground"), joint("S1")],
		wires: [
			...grounded,
			wire("W1", "ECU.A3 > T1.a"),
			returnWire,
			wire("W3", `S1 > ${units[0] === ecu ? "ECU.A4" : "ECU.A2"}`),
			wire("W4", "ECU.A2 > G1"),
			wire("W5", "TCU.B2 > G1"),
		],
	});
}

test("a return that reaches the unit's return pin by a splice is right", () => {
	expect(sensorReturn.check(car(wire("W2", "T1.b > S1")))).toEqual([]);
});

test("a return that was left at another unit stops the work", () => {
	const [found, ...more] = sensorReturn.check(car(wire("W2", "T1.b > TCU.B4")));
	expect(more).toEqual([]);
	expect(found).toMatchObject({ rule: "sensor-return", severity: "stop" });
	expect(found!.where).toContain("T1 coolant sensor");
	expect(found!.why).toContain("goes to TCU.B4");
	expect(found!.path).toEqual(["ECU.A3", "W1", "T1.a", "T1", "T1.b", "W2", "TCU.B4"]);
});

test("sensors whose returns meet in one splice that leads nowhere are one finding, with the free pin named", () => {
	const spare = unit("ECU", "control unit", {
		A1: "supply",
		A2: "ground",
		A3: "input pull-up",
		A4: "sensor return",
		A5: "input pull-up",
		A6: "sensor return",
	});
	const found = sensorReturn.check(
		benchCircuit({
			parts: [battery, spare, part("T1", "thermistor", ["a", "b"]), part("T2", "thermistor", ["a", "b"])],
			joints: [joint("G1", "ground"), joint("S1")],
			wires: [
				wire("W1", "ECU.A3 > T1.a"),
				wire("W2", "ECU.A5 > T2.b"),
				wire("W3", "T1.b > S1"),
				wire("W4", "T2.a > S1"),
				wire("W5", "ECU.A4 > stowed"),
			],
		}),
	);
	expect(found).toHaveLength(1);
	expect(found[0]!.why).toContain("ECU reads T1 at ECU.A3 and T2 at ECU.A5");
	expect(found[0]!.mend).toContain("to ECU, ECU.A6.");
});

test("a return on the body does not count where the unit has return pins", () => {
	const [found] = sensorReturn.check(car(wire("W2", "T1.b > G1")));
	expect(found!.why).toContain("ground");
});

test("a return that ends loose is found", () => {
	const [found] = sensorReturn.check(car(wire("W2", "T1.b > cut")));
	expect(found!.why).toContain("ends before it reaches any unit");
	expect(found!.mend).toContain("ECU.A4");
});

// 0.35 mm2 has some 50 milliohm a metre: 150 m stand for a bad joint.
test("a return of too many ohms is found by the solver", () => {
	const [found] = sensorReturn.check(car(wire("W2", "T1.b > S1", 0.35, 150)));
	expect(found!.why).toMatch(/^7\.\d+ ohm lie between/);
});

test("a unit without return pins takes the return at its ground, by wire or by the body", () => {
	const plain = unit("ECU", "control unit", { A1: "supply", A2: "ground", A3: "input pull-up" });
	expect(sensorReturn.check(car(wire("W2", "T1.b > S1"), [plain, tcu]))).toEqual([]);
	expect(sensorReturn.check(car(wire("W2", "T1.b > G1"), [plain, tcu]))).toEqual([]);
	expect(sensorReturn.check(car(wire("W2", "T1.b > cut"), [plain, tcu]))).toHaveLength(1);
});

test("a two-wire sensor may be wired either way round, or between two inputs", () => {
	const pins = { A1: "supply", A2: "ground", A3: "input pull-up", A4: "sensor return", A5: "input pull-up" };
	const rows = (run: [string, string]) =>
		benchCircuit({
			parts: [
				battery,
				unit("ECU", "control unit", pins),
				part("K1", "coil sensor", ["a", "b"], { values: { ohms: 900 } }),
			],
			wires: [
				...grounded,
				wire("W1", `ECU.A3 > K1.${run[0]}`),
				wire("W2", `${run[1]} > K1.${run[0] === "a" ? "b" : "a"}`),
			],
		});
	expect(sensorReturn.check(rows(["b", "ECU.A4"]))).toEqual([]);
	expect(sensorReturn.check(rows(["a", "ECU.A5"]))).toEqual([]);
	expect(sensorReturn.check(rows(["b", "ECU.A1"]))).toHaveLength(1);
});

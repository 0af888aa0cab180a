import { expect, test } from "vitest";
import type { SheetPart } from "../drawing/sheet/types.js";
import { SMALL_CAR } from "../drawing/small-car.test-helper.js";
import { faultData } from "./fault-data.js";
import { createEngine } from "./service.js";

function opened() {
	const engine = createEngine();
	engine.open(SMALL_CAR);
	return engine;
}

const stateOf = (when: string, id: string) => {
	const { nodes } = opened().subcircuit({ which: "delivered", path: ["W5"], when, further: 0 });
	return (nodes.find((node) => node.id === id) as SheetPart).state;
};

test("what is asked before a car is open fails with words", () => {
	expect(() => createEngine().changes()).toThrow("no car is open");
});

test("a condition sets the switch, and with it the relay", () => {
	expect([stateOf("rest", "S1"), stateOf("rest", "K1")]).toEqual(["off", ""]);
	expect([stateOf("lamp-on", "S1"), stateOf("lamp-on", "K1")]).toEqual(["on", "pulled in"]);
});

test("a wire's state: volts at both ends and the current of the lamp", () => {
	// 21 W at 13.5 V is 1.56 A; at about 12.5 V a filament takes a little less, a plain resistance 1.44 A.
	const { from, to, amps, refused } = opened().wire("delivered", "W7", "lamp-on");
	expect(refused).toBe("");
	expect(amps!.value!).toBeGreaterThan(1.3);
	expect(amps!.value!).toBeLessThan(1.7);
	expect(from!.value!).toBeGreaterThan(to!.value!);
	expect(from!.value!).toBeLessThan(12.6);
});

test("a stowed wire carries nothing, and a wire of no loom is named", () => {
	const engine = opened();
	expect(engine.wire("delivered", "W15", "rest")).toMatchObject({ to: undefined, amps: undefined });
	expect(() => engine.wire("delivered", "W99", "rest")).toThrow("W99");
});

test("errors cross as data: tables by row, refused questions apart from the rest", () => {
	const data = (run: () => unknown) => {
		try {
			return run() as never;
		} catch (error) {
			return faultData(error);
		}
	};
	const wires = SMALL_CAR["wires.csv"].replace("W1,BAT.+,F1.in,2.5", "W1,BAT.+,F1.in,fat");
	const tables = data(() => createEngine().open({ ...SMALL_CAR, "wires.csv": wires }));
	expect(tables).toMatchObject({ kind: "tables", errors: [{ file: "wires.csv", row: 2, column: "size" }] });
	const live = { what: "ohms", from: "BAT.+", to: "F1.in", when: "rest" } as const;
	expect(data(() => opened().reading("delivered", live))).toMatchObject({ kind: "refused" });
	expect(data(() => opened().wire("delivered", "W1", "never"))).toMatchObject({ kind: "engine" });
});

test("proving: the sheet and the stages of the converted car cross as data", () => {
	const engine = opened();
	const sheet = engine.prove();
	expect(structuredClone(sheet)).toEqual(sheet);
	expect(sheet.readings).toBeGreaterThan(0);
	const stages = engine.powerUp();
	expect(structuredClone(stages)).toEqual(stages);
	expect(stages[0]?.kind).toBe("before power");
});

import { fileURLToPath } from "node:url";
import { Circuit, openCar, operate } from "@loomwright/engine";
import { readFolder } from "@loomwright/shop";
import { expect, test } from "vitest";
import { grow } from "./grow.js";

const car = openCar(readFolder(fileURLToPath(new URL("../../demo/small/", import.meta.url))).tables);
const loom = car.converted;
const condition = [...loom.conditions.keys()].at(-1)!;
const voltsOf = (of: typeof loom) => {
	const circuit = new Circuit(of);
	const { volts } = operate(circuit, circuit.standing(condition));
	return new Map(circuit.nodes.map((name, k) => [name, volts[k]!]));
};

test("one copy is the loom itself, electrically", () => {
	expect(voltsOf(grow(loom, 1, new Set()))).toEqual(voltsOf(loom));
});

test("three copies have the same volts at the same places of each, and a battery of three times the strength", () => {
	const [one, three] = [voltsOf(loom), voltsOf(grow(loom, 3, new Set()))];
	expect(three.size).toBeGreaterThan(2.5 * one.size);
	for (const [name, volts] of three) {
		if (!name.includes("~")) continue;
		const first = three.get(name.replaceAll(/~\d/g, ""));
		if (first !== undefined) expect(volts, name).toBeCloseTo(first, 9);
	}
	for (const [name, volts] of one) expect(Math.abs(three.get(name)! - volts), name).toBeLessThan(0.5);
});

test("nothing but whole copies", () => {
	expect(() => grow(loom, 0, new Set())).toThrow("a loom cannot be grown to 0 copies");
	expect(() => grow(loom, 1.5, new Set())).toThrow(RangeError);
});

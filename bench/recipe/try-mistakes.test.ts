import { describe, expect, test } from "vitest";
import { Circuit } from "../../packages/engine/src/circuit/index.js";
import type { Wire } from "../../packages/engine/src/loom/index.js";
import { demoCar } from "../../packages/engine/src/test-support/demo.test-helper.js";
import { seeded } from "../linalg/network-generator.js";
import { alikePins } from "./alike-pins.js";
import { Intended } from "./matters.js";
import { drawMistake } from "./mistakes.js";
import { tryMistakes } from "./try-mistakes.js";

const car = demoCar("small");
const intended = new Intended(new Circuit(car.converted));

/** The converted car with one wire otherwise. */
function withWire(id: string, change: Partial<Wire>): Circuit {
	const wires = new Map(car.converted.wires);
	wires.set(id, { ...wires.get(id)!, ...change });
	return new Circuit({ ...car.converted, wires });
}

describe("what matters", () => {
	test("the intended car itself does not, nor does a sensor's wire of another size", () => {
		expect(intended.matters(new Circuit(car.converted))).toBeUndefined();
		expect(intended.matters(withWire("W22", { mm2: 0.75 }))).toBeUndefined();
	});

	test("a lamp's ground that is cut, a feed too thin for its fuse", () => {
		expect(intended.matters(withWire("W13", { to: { at: "loose", insulated: true } }))).toMatch(
			/function|reading/,
		);
		expect(intended.matters(withWire("W3", { mm2: 0.05 }))).toMatch(/W3|function|reading/);
	});

	test("the leads of a lamp may be changed over, those of a sensor with three may not", () => {
		const alike = alikePins(car.converted);
		expect(alike.get("E-L.1")).toBe("E-L.2");
		expect(alike.has("B-LVR.1")).toBe(false);
	});
});

test("the same seed draws the same mistakes, each with another recipe or part", () => {
	const drawn = (seed: number) => {
		const draw = { tables: car.tables, converted: car.converted, random: seeded(seed) };
		return Array.from({ length: 40 }, () => drawMistake(draw)).flatMap((mistake) => mistake ?? []);
	};
	expect(drawn(5).map(({ text }) => text)).toEqual(drawn(5).map(({ text }) => text));
	expect(drawn(5).length).toBeGreaterThan(10);
	for (const { recipe, parts } of drawn(5))
		expect(parts.size > 0 || JSON.stringify(recipe) !== JSON.stringify(car.tables.recipe)).toBe(true);
});

test("mistakes that the recipe takes are tried, those it refuses counted", () => {
	const { tried, refused } = tryMistakes(car, seeded(9), 12);
	expect(tried).toHaveLength(12);
	expect(refused).toBeGreaterThanOrEqual(0);
	const caught = tried.filter((one) => one.why !== undefined && one.loud.length > 0);
	expect(caught.length).toBeGreaterThan(0);
	for (const { loud, rules } of tried) expect(rules).toEqual(expect.arrayContaining([...loud]));
});

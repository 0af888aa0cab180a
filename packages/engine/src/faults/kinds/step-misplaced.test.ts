/** A step done on the wire beside: the change against the car that the recipe so changed makes. */
import { describe, expect, it } from "vitest";
import { Circuit } from "../../circuit/index.js";
import type { Loom } from "../../loom/index.js";
import { applyRecipe, loomAs } from "../../recipe/index.js";
import { demoCar } from "../../test-support/demo.test-helper.js";
import { ON, stepMisplaced } from "./step-misplaced.js";
import { worstDifference } from "./volts.test-helper.js";

const car = demoCar("main");
const { delivered, recipe, newParts } = car.tables;
/** Step 18 cuts the start line; here the wire beside it. Step 30 frees a lead; here the one in the next cavity. */
const mistakes = [
	["18", "wire", "W209a"],
	["30", "from", "X-BD.22b"],
] as const;
const looms = new Map<string, Loom>(
	mistakes.map(([name, column, instead]) => {
		const changed = recipe.map((step) => (step.step === name ? { ...step, [column]: instead } : step));
		const { loom } = applyRecipe(delivered, changed, newParts);
		return [`${name}${ON}${instead}`, loomAs(loom, "converted")] as const;
	}),
);
const circuit = new Circuit(car.converted, looms);
const steps = new Map(recipe.map((s) => [s.step, { kind: s.kind, title: s.title, place: s.place }]));
const faults = stepMisplaced.list({ circuit, loom: car.converted, touched: car.touched, steps });

it("each names the step and what it was done on", () => {
	expect(faults.map(({ id }) => id)).toEqual(
		[...looms.keys()].map((name) => `step at the wrong place:${name}`),
	);
	expect(faults[0]!.where).toMatch(/step 18 .* W209a/);
});

describe.each(faults)("$id", ({ id, patterns }) => {
	it.each(["key-on", "reverse"])("in %s", (when) => {
		const real = looms.get(id.replace("step at the wrong place:", ""))!;
		expect(worstDifference(circuit, patterns[0]!.change, real, when)).toBeLessThan(1e-6);
	});
});

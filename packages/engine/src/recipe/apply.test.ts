import { expect, test } from "vitest";
import { applyRecipe } from "./apply.js";
import { bench, newParts, recipe, run, step, tables } from "./bench.test-helper.js";

const row = { wire: "W1", to: "E1.3", fresh: "W1X", joint: "S9", metres: 1.5 };
const steps = recipe(
	step("cut", { step: "A1", wire: "W1", at: { metres: 1 } }),
	step("extend", { step: "A2", ...row }),
	step("isolate and stow", { step: "A3", wire: "W1+b" }),
	step("remove part", { step: "A4", part: "T1" }),
);

test("steps are done in row order and the loom put in stays as it is", () => {
	const before = JSON.stringify(tables(bench));
	const { loom, misfits } = applyRecipe(bench, steps, newParts);
	expect(misfits).toEqual([]);
	expect([run(loom, "W1"), run(loom, "W1X"), run(loom, "W1+b")]).toEqual([
		"E1.1 -> S9",
		"S9 -> E1.3",
		"stowed -> cut",
	]);
	expect(JSON.stringify(tables(bench))).toBe(before);
});

test("a recipe of nothing gives the same tables back", () => {
	const { loom, touched } = applyRecipe(bench, [], newParts);
	expect(loom.wires).toBe(bench.wires);
	expect(loom.parts).toBe(bench.parts);
	expect(Object.values(touched).every((map) => map.size === 0)).toBe(true);
});

test("tables no step changes are shared with the loom put in", () => {
	const { loom } = applyRecipe(bench, steps, newParts, { upTo: "A1" });
	expect(loom.contacts).toBe(bench.contacts);
	expect(loom.wires).not.toBe(bench.wires);
});

test("upTo is the last step done", () => {
	const { loom } = applyRecipe(bench, steps, newParts, { upTo: "A2" });
	expect([run(loom, "W1+b"), loom.parts.has("T1")]).toEqual(["cut -> T1.1", true]);
});

test("a step that builds on one left out does not fit and says which is wanted", () => {
	const { loom, misfits, touched } = applyRecipe(bench, steps, newParts, { without: new Set(["A1"]) });
	expect(misfits.map((found) => found.text)).toEqual([
		"step A2 'extend': wire: W1 has no loose end, it runs from E1.1 to T1.1; cut it first, or name a wire with a loose end",
		"step A3 'isolate and stow': wire: there is no wire W1+b at this step; step A1 makes it and must be done before",
	]);
	expect(misfits.map(({ step, kind, row, column }) => [step, kind, row, column])).toEqual([
		["A2", "extend", 3, "wire"],
		["A3", "isolate and stow", 4, "wire"],
	]);
	// the steps that do not build on it are done
	expect(run(loom, "W1")).toBe("E1.1 -> cut");
	expect([...touched.wires.values()].flat()).not.toContain("A2");
});

test("a contact of a part not fitted names the step that fits it", () => {
	const late = recipe(
		step("move terminal", { from: "T1.1", to: "S9.a" }),
		step("fit part", { part: "C9" }),
		step("fit part", { part: "S9" }),
	);
	const { misfits } = applyRecipe(bench, late, newParts);
	expect(misfits.map((found) => found.text)).toEqual([
		"step 1 'move terminal': to: there is no contact S9.a at this step; step 3 makes it and must be done before",
	]);
});

test("an unknown kind is a misfit that lists the kinds", () => {
	const { misfits } = applyRecipe(
		bench,
		[
			{ ...step("cut"), kind: "weld" },
			{ ...step("cut"), kind: "constructor" },
		],
		newParts,
	);
	expect(misfits.map((found) => found.column)).toEqual(["kind", "kind"]);
	expect(misfits[0]?.text).toContain(
		"step 1 'weld': kind: there is no kind 'weld'; one of cut, extend, join,",
	);
});

test("step names that are not there are misuse", () => {
	expect(() => applyRecipe(bench, steps, newParts, { upTo: "A9" })).toThrow("the recipe has no step A9");
	expect(() => applyRecipe(bench, steps, newParts, { without: new Set(["A8"]) })).toThrow(RangeError);
});

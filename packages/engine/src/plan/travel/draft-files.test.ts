import { expect, test } from "vitest";
import { readTables, writeTables } from "../../loom/index.js";
import { applyRecipe, compareLooms } from "../../recipe/index.js";
import { demoCar } from "../../test-support/demo.test-helper.js";
import { draftFiles } from "./draft-files.js";
import { travel } from "./travel.js";

const main = demoCar("main").tables;
const other = demoCar("other-market").tables.delivered;

test("the draft, read with the other car's own tables, does there what the journey did", () => {
	const journey = travel(main, other);
	const { delivered, recipe, newParts, errors } = readTables({
		...writeTables(other),
		...draftFiles(main, journey, other),
	});
	expect(errors).toEqual([]);
	const { misfits, loom } = applyRecipe(delivered, recipe, newParts);
	expect(misfits).toEqual([]);
	expect(compareLooms(loom, journey.loom)).toEqual([]);
	const able = journey.steps.filter(({ verdict }) => verdict !== "not here");
	expect(recipe.map(({ step }) => step)).toEqual(able.map(({ step }) => step.step));
	// demo/other-market/README.md: the code contact of the cluster is another there.
	const code = recipe.find(({ step }) => step === "68");
	expect(code).toMatchObject({
		from: "ICU.21",
		note: expect.stringContaining("to decide: ICU.13: the contact was"),
	});
});

test("where nothing can be done, only the new parts are in it", () => {
	expect(Object.keys(draftFiles(main, { steps: [] }, other))).not.toContain("recipe.csv");
});

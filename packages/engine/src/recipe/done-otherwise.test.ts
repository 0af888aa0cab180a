import { expect, it } from "vitest";
import { demoCar } from "../test-support/demo.test-helper.js";
import { applyRecipe } from "./apply.js";
import { doneOtherwise } from "./done-otherwise.js";

it.each(["small", "main"] as const)(
	"demo/%s: each forgotten step gives the loom of the recipe without it",
	(name) => {
		const { tables } = demoCar(name);
		const variants = doneOtherwise(tables.delivered, tables.recipe, tables.newParts, ({ step }) => [
			{ name: step, step: undefined },
		]);
		expect([...variants.keys()]).toEqual(tables.recipe.map((s) => s.step));
		for (const [step, loom] of variants) {
			const anew = applyRecipe(tables.delivered, tables.recipe, tables.newParts, {
				without: new Set([step]),
			}).loom;
			expect([...loom.wires.values()]).toEqual([...anew.wires.values()]);
			expect([...loom.contacts.keys()]).toEqual([...anew.contacts.keys()]);
		}
	},
);

/** The loom after the recipe with one step forgotten, for every step in turn. */
import type { Loom, NewParts, RecipeTable } from "../loom/index.js";
import { applyStep } from "./apply.js";
import { Draft } from "./draft.js";

/**
 * By step name. Steps that no longer fit without it are left out as well, as they would be on the car.
 * The steps before the forgotten one are done once for all: half the work of applying the recipe anew each time.
 */
export function leftOut(loom: Loom, recipe: RecipeTable, newParts: NewParts): Map<string, Loom> {
	const done = new Draft(loom);
	const variants = new Map<string, Loom>();
	recipe.forEach((step, k) => {
		const draft = new Draft(done.loom());
		for (const later of recipe.slice(k + 1)) applyStep(draft, later, newParts);
		variants.set(step.step, draft.loom());
		applyStep(done, step, newParts);
	});
	return variants;
}

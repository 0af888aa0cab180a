/** The loom after the recipe with one step forgotten, for every step in turn. */
import type { Loom, NewParts, RecipeStep, RecipeTable } from "../loom/index.js";
import { applyStep } from "./apply.js";
import { Draft } from "./draft.js";

/**
 * By step name, for the steps asked about. Steps that no longer fit without it are left out as well, as they would be on the car.
 * The steps before the forgotten one are done once for all: half the work of applying the recipe anew each time.
 */
export function leftOut(
	loom: Loom,
	recipe: RecipeTable,
	newParts: NewParts,
	asked: (step: RecipeStep) => boolean = () => true,
): Map<string, Loom> {
	const variants = new Map<string, Loom>();
	let done = loom;
	recipe.forEach((step, k) => {
		// A draft's loom must not be worked on any further, so each begins a draft of its own.
		if (asked(step)) variants.set(step.step, worked(done, recipe.slice(k + 1), newParts));
		done = worked(done, [step], newParts);
	});
	return variants;
}

function worked(loom: Loom, steps: RecipeTable, newParts: NewParts): Loom {
	const draft = new Draft(loom);
	for (const step of steps) applyStep(draft, step, newParts);
	return draft.loom();
}

/** The loom after the recipe with one step forgotten or done otherwise, for every step in turn. */
import type { Loom, NewParts, RecipeStep, RecipeTable } from "../loom/index.js";
import { applyStep } from "./apply.js";
import { Draft } from "./draft.js";

/** What is done in place of one step. */
export interface Instead {
	/** What the loom that comes of it is called. */
	readonly name: string;
	/** Undefined: nothing, the step is forgotten. */
	readonly step: RecipeStep | undefined;
}

/**
 * By name. A step done otherwise that does not fit gives no loom; the steps after it that no longer fit are left out
 * as well, as they would be on the car. The steps before it are done once for all: half the work of applying the
 * recipe anew each time.
 */
export function doneOtherwise(
	loom: Loom,
	recipe: RecipeTable,
	newParts: NewParts,
	instead: (step: RecipeStep) => readonly Instead[],
): Map<string, Loom> {
	const variants = new Map<string, Loom>();
	const done = new Draft(loom);
	recipe.forEach((step, k) => {
		for (const { name, step: other } of instead(step)) {
			const draft = done.fork();
			if (other !== undefined && applyStep(draft, other, newParts).length > 0) continue;
			for (const later of recipe.slice(k + 1)) applyStep(draft, later, newParts);
			variants.set(name, draft.loom());
		}
		applyStep(done, step, newParts);
	});
	return variants;
}

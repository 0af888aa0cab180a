import type { Loom, NewParts, RecipeStep, RecipeTable } from "../loom/index.js";
import { didYouMean } from "../tables/index.js";
import { Draft } from "./draft.js";
import { type Misfit, misfit } from "./misfit.js";
import { makers, missing, type StepDefinition, type StepKind } from "./step-definition.js";
import { steps as definitions, stepKinds } from "./steps/index.js";
import type { Touched } from "./touched.js";

export interface ApplyOptions {
	/** Steps left out, by name: a fault of its own kind. Steps that build on them may then not fit. */
	readonly without?: ReadonlySet<string>;
	/** The last step done, by name. */
	readonly upTo?: string;
}

export interface Applied {
	readonly loom: Loom;
	/** In step order. Of a step that does not fit nothing is done; the steps after it are. */
	readonly misfits: readonly Misfit[];
	readonly touched: Touched;
}

/**
 * The loom after the recipe. Pure: `loom` is not changed, tables no step changes are shared.
 * Conditions, monitors and functions are passed on as they are; see `loomAs`.
 * Cost: O(wires + contacts) once, then O(1) a step but for parts removed or fitted.
 * @throws RangeError where `without` or `upTo` name no step of the recipe.
 */
export function applyRecipe(
	loom: Loom,
	recipe: RecipeTable,
	newParts: NewParts,
	options: ApplyOptions = {},
): Applied {
	const { without = new Set(), upTo } = options;
	const names = new Set(recipe.map((step) => step.step));
	for (const name of upTo === undefined ? without : [...without, upTo])
		if (!names.has(name)) throw new RangeError(`the recipe has no step ${name}`);
	const draft = new Draft(loom, makers(recipe, definitionOf));
	const misfits: Misfit[] = [];
	for (const step of recipe) {
		if (!without.has(step.step)) misfits.push(...applyStep(draft, step, newParts));
		if (step.step === upTo) break;
	}
	return { loom: draft.loom(), misfits, touched: draft.touched() };
}

/** Does one step on the draft: all of it, or with misfits nothing. */
export function applyStep(draft: Draft, step: RecipeStep, newParts: NewParts): readonly Misfit[] {
	const definition = definitionOf(step.kind);
	if (definition === undefined)
		return [
			misfit(
				step,
				"kind",
				`there is no kind '${step.kind}'`,
				didYouMean(step.kind, stepKinds, `one of ${stepKinds.join(", ")}`),
			),
		];
	const lacking = missing(definition, step);
	if (lacking.length > 0) return lacking;
	const misfits = definition.apply(draft, step, newParts);
	if (misfits.length > 0) draft.drop();
	else draft.keep(step.step);
	return misfits;
}

const definitionOf = (kind: string): StepDefinition | undefined =>
	Object.hasOwn(definitions, kind) ? definitions[kind as StepKind] : undefined;

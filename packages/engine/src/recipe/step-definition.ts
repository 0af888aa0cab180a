import type { NewParts, RecipeStep, RecipeTable } from "../loom/index.js";
import type { Draft } from "./draft.js";
import { type Misfit, misfit } from "./misfit.js";

/** The kinds of docs/tables.md. */
export type StepKind =
	| "cut"
	| "extend"
	| "join"
	| "move terminal"
	| "add wire"
	| "tie to ground"
	| "bridge"
	| "remove part"
	| "fit part"
	| "isolate and stow";

/** A column a kind of step cannot do without, and what belongs there. */
export interface Need {
	readonly column: string;
	readonly wanted: string;
	readonly given: (step: RecipeStep) => boolean;
	/** Only needed of steps for which this holds. */
	readonly when?: (step: RecipeStep) => boolean;
}

/** One kind of step: one file in `steps/`. */
export interface StepDefinition {
	readonly kind: StepKind;
	/** What it does, in one sentence for people. */
	readonly does: string;
	readonly needs: readonly Need[];
	/** Names of the wires, joints and parts that the step brings into the car. */
	readonly makes: (step: RecipeStep) => readonly string[];
	/**
	 * Works on the draft, or tells why the step does not fit. Called only with every need
	 * given. What it staged before finding a misfit is dropped by the caller.
	 */
	readonly apply: (draft: Draft, step: RecipeStep, fresh: NewParts) => readonly Misfit[];
}

/** The needs of a step that its row leaves empty. */
export function missing(definition: StepDefinition, step: RecipeStep): Misfit[] {
	return definition.needs
		.filter((need) => (need.when?.(step) ?? true) && !need.given(step))
		.map((need) => misfit(step, need.column, "is empty", need.wanted));
}

type TextColumn = "wire" | "other" | "from" | "to" | "part" | "joint";

/** Steps by the names they make; the first that makes a name counts. */
export function makers(recipe: RecipeTable, definition: (kind: string) => StepDefinition | undefined) {
	const found = new Map<string, string>();
	for (const step of recipe)
		for (const name of definition(step.kind)?.makes(step) ?? [])
			if (!found.has(name)) found.set(name, step.step);
	return found;
}

/** The name a cut wire's far half gets where the row gives none. */
export const tailName = (step: RecipeStep, cut: string): string => step.fresh || `${cut}+b`;

/** A need of a column of names. */
export const needs = (column: TextColumn, wanted: string, when?: Need["when"]): Need => ({
	column,
	wanted,
	given: (step) => step[column] !== "",
	...(when && { when }),
});

export const needsNew = (when?: Need["when"]): Need => ({
	column: "new",
	wanted: "give the new wire a name",
	given: (step) => step.fresh !== "",
	...(when && { when }),
});

export const needsSize = (when?: Need["when"]): Need => ({
	column: "size",
	wanted: "give the cross-section of the new wire, e.g. 0.75 mm2",
	given: (step) => step.mm2 !== undefined,
	...(when && { when }),
});

export const needsLength = (when?: Need["when"]): Need => ({
	column: "length",
	wanted: "give the length of the new wire, e.g. 1.2 m",
	given: (step) => step.metres !== undefined,
	...(when && { when }),
});

import type { RecipeStep } from "../loom/index.js";

/** Why a step does not fit this car. Nothing of such a step is applied. */
export interface Misfit {
	/** The step's name and kind, and its row in recipe.csv as a spreadsheet counts. */
	readonly step: string;
	readonly kind: string;
	readonly row: number;
	/** The column at fault. */
	readonly column: string;
	/** What is wrong, and what would be right. */
	readonly problem: string;
	readonly wanted: string;
	/** All of it in one sentence: `step 14 'move terminal': from: ECU.B7 has no wire on it; name ...`. */
	readonly text: string;
}

export function misfit(step: RecipeStep, column: string, problem: string, wanted: string): Misfit {
	const { step: name, kind, row } = step;
	const text = `step ${name} '${kind}': ${column}: ${problem}; ${wanted}`;
	return { step: name, kind, row, column, problem, wanted, text };
}

/** A recipe as it would be done on another car, as tables: a draft to be decided on and completed there. */
import { type Loom, type LoomTables, type RecipeStep, writeTables } from "../../loom/index.js";
import type { Journey, Travelled } from "./travel.js";

/**
 * `recipe.csv` with the steps that can be done there, in the names of that car, and the new parts it fits. What must
 * be decided stands in a step's note. Steps that cannot be done there are not in it.
 * @param to the other car as delivered
 */
export function draftFiles(
	from: Pick<LoomTables, "newParts">,
	{ steps }: Pick<Journey, "steps">,
	to: Loom,
): Readonly<Record<string, string>> {
	const recipe = steps.filter(({ verdict }) => verdict !== "not here").map(withNote);
	// Of the car itself nothing is written.
	const files = writeTables({ ...to, conditions: new Map() }, recipe, from.newParts);
	const wanted = ["recipe.csv", "new-parts.csv", "new-contacts.csv", "new-joints.csv"];
	return Object.fromEntries(
		wanted.flatMap((name) => (files[name] === undefined ? [] : [[name, files[name]]])),
	);
}

function withNote({ here, reasons }: Travelled): RecipeStep {
	const told = reasons.map(({ text }) => text).join("; ");
	return told === "" ? here : { ...here, note: [here.note, `to decide: ${told}`].filter(Boolean).join("; ") };
}

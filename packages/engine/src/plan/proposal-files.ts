/** A proposal as tables. */
import { type LoomTables, writeTables } from "../loom/index.js";
import type { Proposal } from "./propose.js";

/**
 * A proposal as tables of the car: `recipe.csv`, and `new-joints.csv` with the splices that it sets.
 * With the car's other tables they make a car that can be opened.
 */
export function proposalFiles(
	{ delivered }: Pick<LoomTables, "delivered">,
	{ recipe, newParts }: Pick<Proposal, "recipe" | "newParts">,
): Readonly<Record<string, string>> {
	const files = writeTables(delivered, recipe, newParts);
	return Object.fromEntries(
		["recipe.csv", "new-joints.csv"].flatMap((name) =>
			files[name] === undefined ? [] : [[name, files[name]]],
		),
	);
}

import type { Row } from "../tables/index.js";
import { bad, type Parsed, parseColours, parseSize } from "../units/index.js";
import { type Context, claim, rowsOf } from "./context.js";
import { parseMinutes } from "./minutes.js";
import { parseName } from "./names.js";
import { parsePositiveLength } from "./read-wires.js";
import type { At, RecipeStep, RecipeTable } from "./recipe-row.js";
import type { RECIPE_COLUMNS } from "./schemas.js";

/**
 * Steps out of `recipe.csv` with their cells typed. Which cells a kind needs, and whether the wires and
 * places named are there when the step comes, is the recipe room's: steps make new ones as they go.
 */
export function readRecipe(context: Context): RecipeTable {
	const steps: RecipeStep[] = [];
	for (const row of rowsOf(context, "recipe", "step")) {
		claim(context, row, "step", "step");
		const step = readStep(row);
		if (!row.faulty) steps.push(step);
	}
	return steps;
}

function readStep(row: Row<keyof typeof RECIPE_COLUMNS>): RecipeStep {
	return {
		step: row.text("step"),
		kind: row.text("kind"),
		title: row.text("title"),
		wire: row.text("wire"),
		other: row.text("other"),
		at: row.read("at", parseAt),
		from: row.text("from"),
		to: row.text("to"),
		part: row.text("part"),
		fresh: row.read("new", parseName) ?? "",
		joint: row.read("joint", parseName) ?? "",
		mm2: row.read("size", parseSize),
		colours: row.read("colour", parseColours) ?? [],
		metres: row.read("length", parsePositiveLength),
		circuit: row.text("circuit"),
		pair: row.text("pair"),
		bundle: row.text("bundle"),
		place: row.text("place"),
		minutes: row.read("minutes", parseMinutes),
		note: row.text("note"),
		row: row.row,
	};
}

function parseAt(text: string): Parsed<At> {
	if (text === "from" || text === "to") return { ok: true, value: text };
	const length = parsePositiveLength(text);
	if (length.ok) return { ok: true, value: { metres: length.value } };
	return bad(length.problem, `from, to, or a length from the wire's from end, e.g. 0.4 m`);
}

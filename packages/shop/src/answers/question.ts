/** Parts that several answers share (docs/json.md). */
import type { Misfit, Which } from "@loomwright/engine";
import { z } from "zod";

export const whichSchema = z.enum(["delivered", "converted"]).describe("the loom asked of");

export const questionSchema = z.object({
	what: z.enum(["ohms", "volts", "drop", "amps"]),
	from: z.string().describe("contact or joint; CONTACT!pin is the part's own side"),
	to: z.string(),
	when: z.string().describe("condition"),
});

export const misfitSchema = z
	.object({
		step: z.string(),
		kind: z.string(),
		row: z.number().int().describe("row of recipe.csv, the header being 1"),
		column: z.string(),
		problem: z.string(),
		wanted: z.string(),
	})
	.describe("a recipe step that does not fit this car and was left out");

export type MisfitAnswer = z.infer<typeof misfitSchema>;

/** The steps left out of the loom asked of: none where the recipe is not applied. */
export function misfitsOf(car: { readonly misfits: readonly Misfit[] }, which: Which): MisfitAnswer[] {
	if (which === "delivered") return [];
	return car.misfits.map(({ step, kind, row, column, problem, wanted }) => ({
		step,
		kind,
		row,
		column,
		problem,
		wanted,
	}));
}

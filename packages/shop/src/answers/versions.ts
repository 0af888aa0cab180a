/** Two versions of a recipe held against each other on one car. */
import { type Car, compareLooms } from "@loomwright/engine";
import { z } from "zod";
import { changeSchema, changesOf } from "./compare.js";
import { misfitSchema, misfitsOf } from "./question.js";
import { changedRows, rowChangeSchema } from "./row-changes.js";

export const versionChangesSchema = z.object({
	tables: z.array(z.object({ name: z.string(), rows: z.array(rowChangeSchema) })),
	changes: z.array(changeSchema).describe("of the loom as converted, from the earlier to the later"),
	minutes: z.object({ before: z.number(), after: z.number() }).describe("of work"),
	misfits: z.array(misfitSchema).describe("steps of the later that do not fit the car"),
});

export type VersionChangesAnswer = z.infer<typeof versionChangesSchema>;

type Tables = Readonly<Record<string, string>>;

export function versionChangesAnswer(
	before: { readonly car: Car; readonly tables: Tables },
	after: { readonly car: Car; readonly tables: Tables },
): VersionChangesAnswer {
	const names = [...new Set([...Object.keys(before.tables), ...Object.keys(after.tables)])].sort();
	const tables = names
		.filter((name) => before.tables[name] !== after.tables[name])
		.map((name) => ({ name, rows: changedRows(before.tables[name], after.tables[name]) }));
	return {
		tables,
		changes: changesOf(compareLooms(before.car.converted, after.car.converted)),
		minutes: { before: minutesOf(before.car), after: minutesOf(after.car) },
		misfits: misfitsOf(after.car, "converted"),
	};
}

const minutesOf = (car: Car): number =>
	car.tables.recipe.reduce((sum, { minutes }) => sum + (minutes ?? 0), 0);

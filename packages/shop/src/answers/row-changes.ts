/** Rows of a table that came, went or changed, as data. */
import { rowChanges } from "@loomwright/engine";
import { z } from "zod";

export const rowChangeSchema = z.object({
	kind: z.enum(["added", "gone", "changed"]),
	key: z.string().describe("what stands in its first column"),
	row: z.number().int().describe("the header being 1; of a row that is gone, where it stood"),
	cells: z.array(z.object({ column: z.string(), was: z.string(), is: z.string() })),
});

export type RowChangeAnswer = z.infer<typeof rowChangeSchema>;

export const changedRows = (before: string | undefined, after: string | undefined): RowChangeAnswer[] =>
	rowChanges(before, after).map((change) => ({ ...change, cells: [...change.cells] }));

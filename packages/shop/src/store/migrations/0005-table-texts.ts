import type { Kysely, Migration } from "kysely";
import { appendOnly } from "./kinds.js";

/** Texts of tables that were replaced, so that an earlier version of a recipe can be read. */
export const tableTexts: Migration = {
	async up(db: Kysely<unknown>) {
		await db.schema
			.createTable("table_text")
			.addColumn("job", "text", (c) => c.notNull().references("job.id"))
			.addColumn("id", "text", (c) => c.notNull())
			.addColumn("text", "text", (c) => c.notNull())
			.addPrimaryKeyConstraint("table_text_key", ["job", "id"])
			.execute();
		await appendOnly(db, "table_text");
	},
};

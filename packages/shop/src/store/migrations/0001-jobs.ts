import type { Kysely, Migration } from "kysely";
import { isPostgres } from "../driver/open.js";
import { appendOnly } from "./kinds.js";

/** Jobs, the tables of their cars, practice evidence, and the history of entries. */
export const jobs: Migration = {
	async up(db: Kysely<unknown>) {
		await db.schema
			.createTable("job")
			.addColumn("id", "text", (c) => c.primaryKey())
			.addColumn("title", "text", (c) => c.notNull())
			.addColumn("source", "text", (c) => c.notNull())
			.addColumn("created", "text", (c) => c.notNull())
			.execute();
		for (const table of ["table_file", "practice_file"])
			await db.schema
				.createTable(table)
				.addColumn("job", "text", (c) => c.notNull().references("job.id"))
				.addColumn("name", "text", (c) => c.notNull())
				.addColumn("text", "text", (c) => c.notNull())
				.addPrimaryKeyConstraint(`${table}_key`, ["job", "name"])
				.execute();
		await db.schema
			.createTable("entry")
			.$call((table) =>
				isPostgres(db)
					? table.addColumn("number", "bigserial", (c) => c.primaryKey())
					: table.addColumn("number", "integer", (c) => c.primaryKey().autoIncrement()),
			)
			.addColumn("id", "text", (c) => c.notNull().unique())
			.addColumn("job", "text", (c) => c.notNull().references("job.id"))
			.addColumn("place", "integer", (c) => c.notNull())
			.addColumn("time", "text", (c) => c.notNull())
			.addColumn("stored", "text", (c) => c.notNull())
			.addColumn("person", "text", (c) => c.notNull())
			.addColumn("kind", "text", (c) => c.notNull())
			.addColumn("body", "text", (c) => c.notNull())
			.addColumn("previous", "text", (c) => c.notNull())
			.addColumn("hash", "text", (c) => c.notNull())
			.addUniqueConstraint("entry_place", ["job", "place"])
			.execute();
		await appendOnly(db, "entry");
	},
};

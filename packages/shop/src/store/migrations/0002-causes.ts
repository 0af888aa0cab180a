import { type Kysely, type Migration, sql } from "kysely";

/** Of an entry: on which tablet it was written, after which entries, and by whose right. Of a job: its chain's own name. */
export const causes: Migration = {
	async up(db: Kysely<unknown>) {
		const text = (table: string, column: string) =>
			db.schema
				.alterTable(table)
				.addColumn(column, "text", (c) => c.notNull().defaultTo(""))
				.execute();
		const whole = (column: string, otherwise: number) =>
			db.schema
				.alterTable("entry")
				.addColumn(column, "integer", (c) => c.notNull().defaultTo(otherwise))
				.execute();
		await text("entry", "account");
		await text("entry", "device");
		await text("entry", "standing");
		await whole("counter", 0);
		await whole("seen", 0);
		// Entries from before are covered by their hash in the first form.
		await whole("form", 1);
		// Holds, sign-offs and the like are asked for by kind, of one job or of all.
		await db.schema.createIndex("entry_kind").on("entry").columns(["kind", "job", "place"]).execute();
		await text("job", "chain");
		await sql`update job set chain = id`.execute(db);
	},
};

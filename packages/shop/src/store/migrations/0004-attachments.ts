import type { Kysely, Migration } from "kysely";
import { appendOnly, bytesType } from "./kinds.js";

/** Photos, named by what is in them. */
export const attachments: Migration = {
	async up(db: Kysely<unknown>) {
		await db.schema
			.createTable("attachment")
			.addColumn("job", "text", (c) => c.notNull().references("job.id"))
			.addColumn("id", "text", (c) => c.notNull())
			.addColumn("type", "text", (c) => c.notNull())
			.addColumn("stored", "text", (c) => c.notNull())
			.addColumn("bytes", bytesType(db), (c) => c.notNull())
			.addPrimaryKeyConstraint("attachment_key", ["job", "id"])
			.execute();
		await appendOnly(db, "attachment");
	},
};

import type { Kysely, Migration } from "kysely";

/** People, what they may sign, who is signed in where, and guests' links. */
export const people: Migration = {
	async up(db: Kysely<unknown>) {
		const table = (name: string) => db.schema.createTable(name);
		await table("person")
			.addColumn("id", "text", (c) => c.primaryKey())
			.addColumn("name", "text", (c) => c.notNull().unique())
			.addColumn("role", "text", (c) => c.notNull())
			.addColumn("pin", "text", (c) => c.notNull())
			.addColumn("active", "integer", (c) => c.notNull())
			.addColumn("misses", "integer", (c) => c.notNull())
			.addColumn("wait_until", "text", (c) => c.notNull())
			.addColumn("created", "text", (c) => c.notNull())
			.execute();
		await table("ability")
			.addColumn("person", "text", (c) => c.notNull().references("person.id"))
			.addColumn("sort", "text", (c) => c.notNull())
			.addColumn("ability", "text", (c) => c.notNull())
			.addPrimaryKeyConstraint("ability_key", ["person", "sort"])
			.execute();
		await table("guest_link")
			.addColumn("id", "text", (c) => c.primaryKey())
			.addColumn("token", "text", (c) => c.notNull().unique())
			.addColumn("job", "text", (c) => c.notNull().references("job.id"))
			.addColumn("name", "text", (c) => c.notNull())
			.addColumn("made_by", "text", (c) => c.notNull())
			.addColumn("ends", "text", (c) => c.notNull())
			.execute();
		await table("session")
			.addColumn("token", "text", (c) => c.primaryKey())
			.addColumn("person", "text", (c) => c.references("person.id"))
			.addColumn("guest_link", "text", (c) => c.references("guest_link.id"))
			.addColumn("ends", "text", (c) => c.notNull())
			.execute();
	},
};

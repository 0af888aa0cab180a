import { type InsertObject, type Kysely, sql } from "kysely";
import { describe, expect, type TestContext, test } from "vitest";
import { onEveryDatabase } from "../databases.test-helper.js";
import { isPostgres, openDatabase } from "../driver/open.js";
import { entryHash } from "../entry/hash.js";
import { migrate } from "../migrate.js";
import type { EntryRow, Schema } from "../schema.js";
import { Store } from "../store.js";
import { migrations } from "./index.js";

const names = Object.keys(migrations).sort();
const upTo = (count: number) =>
	Object.fromEntries(names.slice(0, count).map((name) => [name, migrations[name]!]));

/** Rows in the shape of the first schema, hashed as then. */
async function fill(db: Kysely<Schema>, later = false): Promise<void> {
	await sql`insert into job (id, title, source, created) values ('van', 'A van', '', '2029-01-01T00:00:00.000Z')`.execute(
		db,
	);
	await sql`insert into table_file (job, name, text) values ('van', 'wires.csv', 'wire')`.execute(db);
	if (later) await sql`update job set chain = id`.execute(db);
	let previous = "";
	for (const place of [1, 2]) {
		const entry = {
			...{ id: `old-${place}`, job: "van", place, time: "2029-01-01T00:00:00.000Z" },
			...{
				stored: "2029-01-01T00:00:01.000Z",
				person: "Kim",
				kind: "note",
				body: '{"text":"old"}',
				previous,
			},
		};
		const hash = entryHash({ ...entry, form: 1 } as EntryRow);
		await db
			.insertInto("entry")
			.values({ ...entry, hash } as InsertObject<Schema, "entry">)
			.execute();
		previous = hash;
	}
}

onEveryDatabase((place) => {
	describe("from each earlier schema", () => {
		names.forEach((name, at) => {
			test(`${name}: what was stored is there, and its chain goes on`, async (context: TestContext) => {
				const where = await place.empty(context);
				const db = openDatabase(where);
				await migrate(db, "it", false, upTo(at + 1));
				await fill(db, at > 0);
				await db.destroy();
				const store = await Store.open(where);
				expect((await store.job("van"))?.chain).toBe("van");
				expect(await store.tables("van")).toEqual({ "wires.csv": "wire" });
				await store.append("van", { id: "new-1", person: "Lee", kind: "note", body: { text: "new" } });
				const entries = await store.entries("van");
				expect(await store.verify("van")).toBeUndefined();
				await store.close();
				expect(entries.map(({ id, device, seen }) => [id, device, seen])).toEqual([
					["old-1", "", 0],
					["old-2", "", 0],
					["new-1", "", 2],
				]);
			});
		});
	});

	test("a migration that fails leaves the database as it was, and says so", async (context) => {
		const where = await place.empty(context);
		const db = openDatabase(where);
		await migrate(db, "it", false, upTo(1));
		await fill(db);
		const broken = {
			async up(trx: Kysely<unknown>) {
				await sql`drop table table_file`.execute(trx);
				await sql`this is no statement`.execute(trx);
			},
		};
		const doing = migrate(db, "the database", isPostgres(db), { ...upTo(1), "0002-broken": broken });
		await expect(doing).rejects.toMatchObject({
			message: expect.stringMatching(
				/^the database cannot be brought up to date: .* it is as it was before$/s,
			),
			toDo: expect.stringContaining("Put back a copy"),
		});
		await db.destroy();
		const store = await Store.open(where);
		expect(await store.tables("van")).toEqual({ "wires.csv": "wire" });
		expect(await store.verify("van")).toBeUndefined();
		await store.close();
	});
});

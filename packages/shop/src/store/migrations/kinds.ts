/** What the two databases write differently in a table's definition. */
import { type Kysely, sql } from "kysely";
import { isPostgres } from "../driver/open.js";

/** Column type of bytes. */
export const bytesType = (db: Kysely<unknown>) => (isPostgres(db) ? "bytea" : "blob");

/** Makes the database itself refuse to change or delete rows of a table. */
export async function appendOnly(db: Kysely<unknown>, table: string): Promise<void> {
	const run = (text: string) => sql.raw(text).execute(db);
	const refusal = `${table} is append-only`;
	if (isPostgres(db))
		await run(
			`create function ${table}_refuse() returns trigger language plpgsql as ` +
				`$$ begin raise exception '${refusal}'; end $$`,
		);
	for (const act of ["update", "delete"])
		await run(
			`create trigger ${table}_no_${act} before ${act} on ${table} ` +
				(isPostgres(db)
					? `for each row execute function ${table}_refuse()`
					: `begin select raise(abort, '${refusal}'); end`),
		);
	if (isPostgres(db))
		await run(
			`create trigger ${table}_no_truncate before truncate on ${table} execute function ${table}_refuse()`,
		);
}

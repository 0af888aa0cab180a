/** Texts of tables that were replaced, each kept once under its fingerprint; the history says when which stood. */
import type { Kysely, Transaction } from "kysely";
import { fingerprint } from "./jobs.js";
import type { Schema } from "./schema.js";

export async function keepTexts(
	trx: Transaction<Schema>,
	job: string,
	texts: readonly string[],
): Promise<void> {
	for (const text of texts)
		await trx
			.insertInto("table_text")
			.values({ job, id: fingerprint(text), text })
			.onConflict((clash) => clash.columns(["job", "id"]).doNothing())
			.execute();
}

/** Fingerprint to text, of those that were kept. */
export async function keptTexts(db: Kysely<Schema>, job: string): Promise<ReadonlyMap<string, string>> {
	const rows = await db.selectFrom("table_text").select(["id", "text"]).where("job", "=", job).execute();
	return new Map(rows.map(({ id, text }) => [id, text]));
}

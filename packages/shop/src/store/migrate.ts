import { type Kysely, Migrator } from "kysely";
import { StoreError } from "./error.js";
import { migrations } from "./migrations/index.js";

/**
 * Brings a database up to the newest shape, all or nothing.
 * @throws StoreError when it was made by a newer program or a migration fails
 */
export async function migrate<T>(db: Kysely<T>, file: string): Promise<void> {
	const migrator = new Migrator({ db, provider: { getMigrations: async () => ({ ...migrations }) } });
	const { error } = await migrator.migrateToLatest();
	if (error === undefined) return;
	const text = error instanceof Error ? error.message : String(error);
	throw /previously executed migration/.test(text)
		? new StoreError(
				`${file} was written by a newer Loomwright`,
				"Start the newer one, or name another folder with --data.",
			)
		: new StoreError(
				`${file} cannot be brought up to date: ${text}`,
				"Put back a copy of it, or name another folder with --data.",
			);
}

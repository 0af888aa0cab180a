import { type Kysely, type Migration, Migrator } from "kysely";
import { StoreError } from "./error.js";
import { inWords } from "./failure.js";
import { migrations } from "./migrations/index.js";

/**
 * Brings a database up to the newest shape, all or nothing.
 * @param shown how messages call it
 * @param address whether it is a PostgreSQL database rather than a file
 * @param steps the migrations to do; left out: all there are
 * @throws StoreError when it was made by a newer program or a migration fails
 */
export async function migrate<T>(
	db: Kysely<T>,
	shown: string,
	address = false,
	steps: Readonly<Record<string, Migration>> = migrations,
): Promise<void> {
	const migrator = new Migrator({ db, provider: { getMigrations: async () => ({ ...steps }) } });
	const { error } = await migrator.migrateToLatest();
	if (error === undefined) return;
	const told = inWords(error);
	if (told instanceof StoreError) throw told;
	const text = error instanceof Error ? error.message : String(error);
	const other = address ? "name another database in DATABASE_URL" : "name another folder with --data";
	throw /previously executed migration/.test(text)
		? new StoreError(`${shown} was written by a newer Loomwright`, `Start the newer one, or ${other}.`)
		: new StoreError(
				`${shown} cannot be brought up to date: ${text}; it is as it was before`,
				`Put back a copy of it, or ${other}.`,
			);
}

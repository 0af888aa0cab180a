/**
 * The embedded database: the one file that knows its driver.
 *
 * WAL with synchronous=FULL: a commit that was acknowledged survives a kill and a loss of power.
 */
import { mkdirSync } from "node:fs";
import { dirname } from "node:path";
import Database from "better-sqlite3";
import {
	CompiledQuery,
	type DatabaseConnection,
	Kysely,
	SqliteAdapter,
	type SqliteDatabase,
	SqliteDialect,
	type SqliteDialectConfig,
	SqliteDriver,
	type SqliteStatement,
	type TransactionSettings,
} from "kysely";
import { StoreError } from "../error.js";
import type { Schema } from "../schema.js";
import type { Limits } from "./open.js";

/** How long a commit waits for another process that holds the file, in milliseconds. */
const BUSY_MS = 5000;

/** Takes the write lock when a transaction starts, so that what it reads is what it then writes on. */
class WriteFirstDriver extends SqliteDriver {
	override async beginTransaction(
		connection: DatabaseConnection,
		settings: TransactionSettings = {},
	): Promise<void> {
		const begin = settings.accessMode === "read only" ? "begin" : "begin immediate";
		await connection.executeQuery(CompiledQuery.raw(begin));
	}
}

/** SQLite takes back table changes with the transaction, so a migration that fails or is killed leaves nothing. */
class WholeMigrationsAdapter extends SqliteAdapter {
	override get supportsTransactionalDdl(): boolean {
		return true;
	}
}

class WriteFirstDialect extends SqliteDialect {
	readonly #config: SqliteDialectConfig;

	constructor(config: SqliteDialectConfig) {
		super(config);
		this.#config = config;
	}

	override createAdapter(): SqliteAdapter {
		return new WholeMigrationsAdapter();
	}

	override createDriver(): SqliteDriver {
		return new WriteFirstDriver(this.#config);
	}
}

/** Statements kept; the queries of this program are far fewer. */
const MOST_KEPT = 300;

/** The database with each statement prepared once: preparing one takes longer than most take to run. */
function preparedOnce(database: Database.Database): SqliteDatabase {
	const kept = new Map<string, SqliteStatement>();
	return {
		close: () => void database.close(),
		prepare(sql) {
			let statement = kept.get(sql);
			if (statement === undefined) {
				if (kept.size >= MOST_KEPT) kept.clear();
				statement = database.prepare(sql) as unknown as SqliteStatement;
				kept.set(sql, statement);
			}
			return statement;
		},
	};
}

/**
 * Opens the database file, making it and its folder when missing.
 * @throws StoreError when the folder or file cannot be written or is no database
 */
export function openSqlite(file: string, { busyMs = BUSY_MS, pages }: Limits): Kysely<Schema> {
	try {
		mkdirSync(dirname(file), { recursive: true });
		const database = new Database(file, { timeout: busyMs });
		database.pragma("journal_mode = WAL");
		database.pragma("synchronous = FULL");
		database.pragma("foreign_keys = ON");
		if (pages !== undefined) database.pragma(`max_page_count = ${pages}`);
		return new Kysely<Schema>({ dialect: new WriteFirstDialect({ database: preparedOnce(database) }) });
	} catch (error) {
		throw new StoreError(
			`${file} cannot be opened as the shop's database: ${(error as Error).message}`,
			"Name a folder that can be written with --data.",
		);
	}
}

/** The shop's database, opened: what the server asks of it. Every change is one transaction. */
import type { Kysely } from "kysely";
import { openDatabase } from "./driver.js";
import { appendEntry, type Entry, entriesOf, type NewEntry, verifyChain } from "./entry/append.js";
import {
	addJob,
	type Files,
	filesOf,
	findJob,
	fingerprint,
	listJobs,
	type NewJob,
	putFiles,
} from "./jobs.js";
import { migrate } from "./migrate.js";
import type { JobRow, Schema } from "./schema.js";

export class Store {
	readonly #db: Kysely<Schema>;
	readonly #now: () => Date;

	private constructor(db: Kysely<Schema>, now: () => Date) {
		this.#db = db;
		this.#now = now;
	}

	/**
	 * Opens the database file, making it when missing, and brings it up to date.
	 * @throws StoreError when that cannot be done
	 */
	static async open(file: string, now: () => Date = () => new Date()): Promise<Store> {
		const db = openDatabase(file);
		try {
			await migrate(db, file);
		} catch (error) {
			await db.destroy();
			throw error;
		}
		return new Store(db, now);
	}

	jobs(): Promise<JobRow[]> {
		return listJobs(this.#db);
	}

	job(id: string): Promise<JobRow | undefined> {
		return findJob(this.#db, id);
	}

	addJob(job: NewJob): Promise<JobRow> {
		return this.#db.transaction().execute((trx) => addJob(trx, job, this.#time()));
	}

	tables(job: string): Promise<Files> {
		return filesOf(this.#db, "table_file", job);
	}

	practice(job: string): Promise<Files> {
		return filesOf(this.#db, "practice_file", job);
	}

	/**
	 * Replaces tables of a job, all or none, and enters in its history which.
	 * @param check is given all tables as they would be; what it throws leaves everything as it was
	 */
	replaceTables(
		job: string,
		files: Files,
		by: { id: string; person: string },
		check: (tables: Files) => void,
	): Promise<Entry | undefined> {
		return this.#db.transaction().execute(async (trx) => {
			const before = await filesOf(trx, "table_file", job);
			check({ ...before, ...files });
			const names = Object.keys(files).filter((name) => before[name] !== files[name]);
			if (names.length === 0) return undefined;
			await putFiles(trx, "table_file", job, files);
			const changed = names.map((name) => ({
				name,
				before: fingerprint(before[name]),
				after: fingerprint(files[name]),
			}));
			const entry: NewEntry = { ...by, kind: "tables", body: { files: changed } };
			return (await appendEntry(trx, job, entry, this.#time())).entry;
		});
	}

	/** Adds an entry to a job's history. The same entry sent twice is stored once. */
	append(job: string, entry: NewEntry): Promise<{ entry: Entry; added: boolean }> {
		const stored = this.#time();
		return this.#db.transaction().execute((trx) => appendEntry(trx, job, entry, stored));
	}

	entries(job: string, after = 0): Promise<Entry[]> {
		return entriesOf(this.#db, job, after);
	}

	/** Where a job's history has been tampered with, in words; undefined when it stands as written. */
	verify(job: string): Promise<string | undefined> {
		return verifyChain(this.#db, job);
	}

	close(): Promise<void> {
		return this.#db.destroy();
	}

	#time(): string {
		return this.#now().toISOString();
	}
}

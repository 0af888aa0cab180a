/** Jobs and the tables of their cars. */
import { createHash } from "node:crypto";
import { type Kysely, sql, type Transaction } from "kysely";
import { isPostgres } from "./driver/open.js";
import { StoreError } from "./error.js";
import type { JobRow, Schema } from "./schema.js";

/** File name to text. */
export type Files = Readonly<Record<string, string>>;

/** File name to text; null: the file goes. */
export type FileChanges = Readonly<Record<string, string | null>>;

/** The files after a change. */
export function changedFiles(before: Files, changes: FileChanges): Files {
	const after = Object.entries({ ...before, ...changes });
	return Object.fromEntries(after.filter((file): file is [string, string] => file[1] !== null));
}

export interface NewJob {
	readonly title: string;
	/** Folder it was taken from, or empty. */
	readonly source: string;
	readonly tables: Files;
	readonly practice: Files;
}

export const listJobs = (db: Kysely<Schema>): Promise<JobRow[]> =>
	db.selectFrom("job").selectAll().orderBy("created").orderBy("id").execute();

export const findJob = (db: Kysely<Schema>, id: string): Promise<JobRow | undefined> =>
	db.selectFrom("job").selectAll().where("id", "=", id).executeTakeFirst();

/**
 * Keeps others from adding to a job until the transaction ends; the embedded database has but one writer anyway.
 * @throws StoreError when there is no such job
 */
export async function holdJob(trx: Transaction<Schema>, id: string): Promise<JobRow> {
	const found = await trx
		.selectFrom("job")
		.selectAll()
		.where("id", "=", id)
		.$if(isPostgres(trx), (query) => query.forUpdate())
		.executeTakeFirst();
	if (found) return found;
	throw new StoreError(`there is no job '${id}'`, "Name one of the jobs there are.");
}

/** Stores a new job; its id comes from the title, with a number when taken. */
export async function addJob(trx: Transaction<Schema>, job: NewJob, created: string): Promise<JobRow> {
	const id = await freeId(trx, job.title);
	const row: JobRow = { id, title: job.title, source: job.source, created, chain: id };
	await trx.insertInto("job").values(row).execute();
	await putFiles(trx, "table_file", row.id, job.tables);
	await putFiles(trx, "practice_file", row.id, job.practice);
	return row;
}

/** Stores a new job unless, by the jobs there are, it need not be; others who add jobs at the same time wait. */
export async function addJobUnless(
	trx: Transaction<Schema>,
	job: NewJob,
	created: string,
	there: (jobs: readonly JobRow[]) => boolean,
): Promise<JobRow | undefined> {
	if (isPostgres(trx)) await sql`lock table job in share row exclusive mode`.execute(trx);
	return there(await listJobs(trx)) ? undefined : addJob(trx, job, created);
}

/** @param wanted taken unless another job has it; left out: made of the title */
export async function freeId(db: Kysely<Schema>, title: string, wanted = stemOf(title)): Promise<string> {
	const taken = new Set((await listJobs(db)).map((job) => job.id));
	let id = wanted;
	for (let n = 2; taken.has(id); n += 1) id = `${wanted}-${n}`;
	return id;
}

const stemOf = (title: string): string =>
	title
		.normalize("NFKD")
		.toLowerCase()
		.replace(/[^a-z0-9]+/g, "-")
		.slice(0, 40)
		.replace(/^-|-$/g, "") || "job";

/** The files of a job by name: its tables, or its practice evidence. */
export async function filesOf(
	db: Kysely<Schema>,
	kind: "table_file" | "practice_file",
	job: string,
): Promise<Files> {
	const rows = await db
		.selectFrom(kind)
		.select(["name", "text"])
		.where("job", "=", job)
		.orderBy("name")
		.execute();
	return Object.fromEntries(rows.map((row) => [row.name, row.text]));
}

/** Stores files of a job, in place of those of the same name. */
export async function putFiles(
	trx: Transaction<Schema>,
	kind: "table_file" | "practice_file",
	job: string,
	files: Files,
): Promise<void> {
	for (const [name, text] of Object.entries(files))
		await trx
			.insertInto(kind)
			.values({ job, name, text })
			.onConflict((clash) => clash.columns(["job", "name"]).doUpdateSet({ text }))
			.execute();
}

/** Takes files of a job away. */
export async function dropFiles(
	trx: Transaction<Schema>,
	kind: "table_file",
	job: string,
	names: readonly string[],
): Promise<void> {
	if (names.length > 0)
		await trx.deleteFrom(kind).where("job", "=", job).where("name", "in", names).execute();
}

/** Fingerprint of a file's text: SHA-256, hexadecimal; empty for no file. */
export const fingerprint = (text: string | undefined): string =>
	text === undefined ? "" : createHash("sha256").update(text, "utf8").digest("hex");

/** Reads what dump/write.ts wrote: checked line by line, its end by its SHA-256, its histories by their chains. */
import { createHash } from "node:crypto";
import { type Kysely, sql, type Transaction } from "kysely";
import { isPostgres } from "../driver/open.js";
import { chainFault, type Link, sortedJson } from "../entry/hash.js";
import { StoreError } from "../error.js";
import { freeId } from "../jobs.js";
import { migrations } from "../migrations/index.js";
import type { JobRow, Schema } from "../schema.js";
import { DUMPED, type DumpTable, type Head } from "./tables.js";

type Row = Record<string, unknown>;

/** The file is not what it should be: nothing of it was stored. */
export class DumpError extends StoreError {}

/**
 * Puts a whole shop into a database without jobs or people.
 * @throws DumpError, on which the caller takes everything back
 */
export async function restoreLines(trx: Transaction<Schema>, lines: AsyncIterable<string>): Promise<void> {
	for (const table of ["job", "person"] as const) {
		const there = await trx.selectFrom(table).select("id").limit(1).executeTakeFirst();
		if (there)
			throw new DumpError(
				"the database to restore into is not empty",
				"Name an empty folder with --data, or an empty PostgreSQL database in DATABASE_URL.",
			);
	}
	for await (const { table, row } of checked(lines, "backup")) await insert(trx, table, row);
	if (isPostgres(trx))
		await sql`select setval(pg_get_serial_sequence('entry', 'number'), coalesce(max(number), 1)) from entry`.execute(
			trx,
		);
	for (const job of await trx.selectFrom("job").selectAll().execute()) await checkChain(trx, job);
}

/**
 * Puts one job into a shop, under another id where its own is taken.
 * @throws DumpError, on which the caller takes everything back
 */
export async function importLines(trx: Transaction<Schema>, lines: AsyncIterable<string>): Promise<JobRow> {
	let job: JobRow | undefined;
	for await (const { table, row } of checked(lines, "job")) {
		if (table.name === "job") {
			if (job) throw new DumpError("the file holds two jobs", "Import a file that the command export wrote.");
			const title = String(row.title);
			const id = await freeId(trx, title, String(row.id));
			job = { ...(row as unknown as JobRow), id, source: "" };
			await insert(trx, table, { ...job });
			continue;
		}
		if (!job) throw new DumpError("the file names no job", "Import a file that the command export wrote.");
		const own: Row = { ...row, job: job.id };
		if (table.counted) delete own[table.counted];
		if (table.name === "entry") await checkNew(trx, String(row.id));
		await insert(trx, table, own);
	}
	if (!job) throw new DumpError("the file holds no job", "Import a file that the command export wrote.");
	await checkChain(trx, job);
	return job;
}

/** An entry is in the shop once: a job that came from here, or came before, is not taken in twice. */
async function checkNew(trx: Transaction<Schema>, id: string): Promise<void> {
	const there = await trx.selectFrom("entry").select("job").where("id", "=", id).executeTakeFirst();
	if (there)
		throw new DumpError(
			`this job is here already, as '${there.job}': it has the same entries`,
			"Import it into another shop, or go on with the one that is here.",
		);
}

async function checkChain(db: Kysely<Schema>, job: JobRow): Promise<void> {
	const rows = await db.selectFrom("entry").selectAll().where("job", "=", job.id).orderBy("place").execute();
	const fault = chainFault(rows as Link[], job.chain);
	if (fault !== undefined)
		throw new DumpError(
			`the history of '${job.title}' is not as it was written: ${fault}`,
			"Take another copy, from before it was changed.",
		);
}

/** The rows of a file of the given kind; at its end, that it is whole. */
async function* checked(
	lines: AsyncIterable<string>,
	kind: Head["loomwright"],
): AsyncGenerator<{ table: DumpTable; row: Row }> {
	const hash = createHash("sha256");
	let number = 0;
	let ended = false;
	for await (const text of lines) {
		number += 1;
		const line = parsed(text, number);
		if (ended) throw wrong(number, "stands after the file's last line");
		if (number === 1) checkHead(line, kind);
		else if ("sha256" in line) {
			if (line.sha256 !== hash.digest("hex") || line.rows !== number - 2)
				throw wrong(number, "does not fit what stands before it: the file was changed or lines are missing");
			ended = true;
			continue;
		} else yield rowOf(line, number);
		hash.update(`${text}\n`, "utf8");
	}
	if (!ended)
		throw new DumpError(
			"the file ends before its last line: it was cut short",
			"Copy it again from where it was written.",
		);
}

function parsed(text: string, number: number): Row {
	try {
		const value: unknown = JSON.parse(text);
		if (value !== null && typeof value === "object" && !Array.isArray(value)) return value as Row;
	} catch {
		// Told below, as anything else that is no object.
	}
	throw wrong(number, "is no JSON object");
}

function checkHead(line: Row, kind: Head["loomwright"]): void {
	if (line.loomwright !== kind) {
		const toDo =
			kind === "backup" ? "Restore a file of the command backup." : "Import a file of the command export.";
		throw new DumpError(`this is no ${kind} file`, toDo);
	}
	if (line.version !== 1 || !Object.hasOwn(migrations, String(line.schema)))
		throw new DumpError("this file was written by a newer Loomwright", "Use the newer one.");
}

function rowOf(line: Row, number: number): { table: DumpTable; row: Row } {
	const table = DUMPED.find(({ name }) => name === line.table);
	const row = line.row;
	if (!table || row === null || typeof row !== "object") throw wrong(number, "is no row of a known table");
	const own: Row = { ...row };
	for (const column of table.bytes ?? []) own[column] = Buffer.from(String(own[column]), "base64");
	return { table, row: own };
}

async function insert(trx: Transaction<Schema>, table: DumpTable, row: Row): Promise<void> {
	try {
		await trx
			.insertInto(table.name)
			.values(row as never)
			.execute();
	} catch (error) {
		throw new DumpError(
			`a row of ${table.name} does not fit the database: ${(error as Error).message} (${sortedJson(row).slice(0, 80)})`,
			"Take another copy, from before it was changed.",
			{ cause: error },
		);
	}
}

const wrong = (line: number, what: string) =>
	new DumpError(`line ${line} ${what}`, "Copy the file again from where it was written, or take another.");

/** Writes a whole shop, or one job, as lines of JSON (docs/shop.md). The same rows give the same bytes on either database. */
import { createHash } from "node:crypto";
import { type Kysely, sql } from "kysely";
import { isPostgres } from "../driver/open.js";
import { sortedJson } from "../entry/hash.js";
import { migrations } from "../migrations/index.js";
import type { Schema } from "../schema.js";
import { DUMPED, type DumpTable, type Head, type RowLine, type Tail } from "./tables.js";

type Row = Record<string, unknown>;

/** Rows asked for at a time; photos come one by one. */
const BATCH = 500;

/**
 * The lines of the file, each with its line end.
 * @param db within one transaction, so that the file is of one moment
 * @param job left out: the whole shop
 */
export async function* dumpLines(db: Kysely<Schema>, job?: string): AsyncGenerator<string> {
	const hash = createHash("sha256");
	const line = (value: Head | RowLine): string => {
		const text = `${sortedJson(value)}\n`;
		hash.update(text, "utf8");
		return text;
	};
	const schema = Object.keys(migrations).sort().at(-1)!;
	yield line({ loomwright: job === undefined ? "backup" : "job", version: 1, schema });
	let rows = 0;
	for (const table of DUMPED) {
		if (job !== undefined && table.job === undefined) continue;
		for await (const row of rowsOf(db, table, job)) {
			rows += 1;
			yield line({ table: table.name, row: written(table, row) });
		}
	}
	const tail: Tail = { rows, sha256: hash.digest("hex") };
	yield `${sortedJson(tail)}\n`;
}

async function* rowsOf(db: Kysely<Schema>, table: DumpTable, job: string | undefined): AsyncGenerator<Row> {
	const limit = table.bytes ? 1 : BATCH;
	// Text in the order of its bytes, so that both databases give one order.
	const collate = isPostgres(db) ? sql` collate "C"` : sql``;
	const order = sql.join(
		table.key.map((column) =>
			column === table.counted ? sql.ref(column) : sql`${sql.ref(column)}${collate}`,
		),
	);
	const ofJob = job !== undefined && table.job ? sql`${sql.ref(table.job)} = ${job}` : sql`1 = 1`;
	let last: Row | undefined;
	do {
		const after = last
			? sql`(${order}) > (${sql.join(table.key.map((column) => last?.[column]))})`
			: sql`1 = 1`;
		const { rows } = await sql<Row>`
			select * from ${sql.table(table.name)} where ${after} and ${ofJob} order by ${order} limit ${limit}
		`.execute(db);
		yield* rows;
		last = rows.length < limit ? undefined : rows.at(-1);
	} while (last);
}

function written(table: DumpTable, row: Row): Row {
	const shown: Row = { ...row };
	for (const column of table.bytes ?? [])
		shown[column] = Buffer.from(row[column] as Uint8Array).toString("base64");
	return shown;
}

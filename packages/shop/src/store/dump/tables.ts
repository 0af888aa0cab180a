/** The tables that a file holds, in an order in which each refers only to those before it, with the order of their rows. */
import type { Schema } from "../schema.js";

export interface DumpTable {
	readonly name: keyof Schema;
	/** Columns that put the rows in one order, and by which the next batch of them is asked for. */
	readonly key: readonly string[];
	/** Column that names the job, for the tables that belong to one. */
	readonly job?: string;
	/** Column counted by the database itself. */
	readonly counted?: string;
	/** Columns of bytes, written as base64. */
	readonly bytes?: readonly string[];
}

/** Sessions are left out: whoever works with a copy signs in anew. */
export const DUMPED: readonly DumpTable[] = [
	{ name: "person", key: ["id"] },
	{ name: "ability", key: ["person", "sort"] },
	{ name: "job", key: ["id"], job: "id" },
	{ name: "table_file", key: ["job", "name"], job: "job" },
	{ name: "practice_file", key: ["job", "name"], job: "job" },
	{ name: "table_text", key: ["job", "id"], job: "job" },
	{ name: "entry", key: ["number"], job: "job", counted: "number" },
	{ name: "attachment", key: ["job", "id"], job: "job", bytes: ["bytes"] },
	{ name: "guest_link", key: ["id"] },
];

/** First line of a file. */
export interface Head {
	readonly loomwright: "backup" | "job";
	readonly version: 1;
	/** Name of the last migration of the database it was written from. */
	readonly schema: string;
}

/** A line between the first and the last. */
export interface RowLine {
	readonly table: string;
	readonly row: Readonly<Record<string, unknown>>;
}

/** Last line: how many rows, and SHA-256 of every byte before this line. */
export interface Tail {
	readonly rows: number;
	readonly sha256: string;
}

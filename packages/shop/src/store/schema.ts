/** The tables of the shop's database, as the queries see them. Made by store/migrations. */
import type { Generated } from "kysely";

/** One car in the shop. */
export interface JobRow {
	/** Short name used in addresses, e.g. `main`. */
	readonly id: string;
	readonly title: string;
	/** Folder the job was taken from, absolute; empty when it came otherwise. */
	readonly source: string;
	/** ISO 8601, UTC. */
	readonly created: string;
}

/** A table of a job's car (docs/tables.md), as it stands now. */
export interface TableFileRow {
	readonly job: string;
	/** `wires.csv` */
	readonly name: string;
	readonly text: string;
}

/** An evidence file that comes with the car, to practise on (docs/evidence.md). */
export interface PracticeFileRow {
	readonly job: string;
	readonly name: string;
	readonly text: string;
}

/** One line of a job's history. Rows are never changed or deleted; the database refuses it. */
export interface EntryRow {
	/** Order of arrival over all jobs. */
	readonly number: Generated<number>;
	/** Given by whoever wrote it, so that sending it twice stores it once. */
	readonly id: string;
	readonly job: string;
	/** Place in the job's chain, from 1. */
	readonly place: number;
	/** When it happened, ISO 8601, UTC. */
	readonly time: string;
	/** When it was stored, ISO 8601, UTC. */
	readonly stored: string;
	readonly person: string;
	readonly kind: string;
	/** JSON with sorted keys. */
	readonly body: string;
	/** Hash of the entry before it in the job; empty for the first. */
	readonly previous: string;
	/** SHA-256 over the entry and `previous`, hexadecimal (store/entry/hash.ts). */
	readonly hash: string;
}

export interface Schema {
	job: JobRow;
	table_file: TableFileRow;
	practice_file: PracticeFileRow;
	entry: EntryRow;
}

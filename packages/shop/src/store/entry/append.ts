import type { Kysely, Selectable, Transaction } from "kysely";
import { StoreError } from "../error.js";
import type { EntryRow, Schema } from "../schema.js";
import { chainFault, entryHash, sortedJson } from "./hash.js";
import type { Kept } from "./kinds.js";

/** A stored entry. */
export type Entry = Kept & {
	readonly id: string;
	readonly place: number;
	readonly time: string;
	readonly stored: string;
	readonly person: string;
	readonly previous: string;
	readonly hash: string;
};

/** An entry to be stored: who, what, and when it happened (ISO 8601, UTC; left out: now). */
export type NewEntry = Kept & {
	readonly id: string;
	readonly time?: string | undefined;
	readonly person: string;
};

/** Already there under this id, with other content. */
export class EntryClash extends StoreError {}

/**
 * Adds an entry to the end of a job's chain. The same entry sent twice is stored once.
 * @param stored when it is stored, ISO 8601, UTC
 * @throws EntryClash when the id is taken by another entry
 */
export async function appendEntry(
	trx: Transaction<Schema>,
	job: string,
	entry: NewEntry,
	stored: string,
): Promise<{ entry: Entry; added: boolean }> {
	const { id, person, kind } = entry;
	const time = entry.time ?? stored;
	const body = sortedJson(entry.body);
	const there = await trx.selectFrom("entry").selectAll().where("id", "=", id).executeTakeFirst();
	if (there) {
		const same =
			there.job === job &&
			there.person === person &&
			there.kind === kind &&
			there.body === body &&
			(entry.time === undefined || entry.time === there.time);
		if (same) return { entry: entryOf(there), added: false };
		throw new EntryClash(`another entry has the id ${id}`, "Give the entry an id of its own.");
	}
	const last = await trx
		.selectFrom("entry")
		.select(["place", "hash"])
		.where("job", "=", job)
		.orderBy("place", "desc")
		.limit(1)
		.executeTakeFirst();
	const covered = {
		id,
		job,
		place: (last?.place ?? 0) + 1,
		time,
		stored,
		person,
		kind,
		body,
		previous: last?.hash ?? "",
	};
	const row = await trx
		.insertInto("entry")
		.values({ ...covered, hash: entryHash(covered) })
		.returningAll()
		.executeTakeFirstOrThrow();
	return { entry: entryOf(row), added: true };
}

/** A job's entries in order, those after a place. */
export async function entriesOf(db: Kysely<Schema>, job: string, after = 0): Promise<Entry[]> {
	const rows = await rowsOf(db, job, after);
	return rows.map(entryOf);
}

/** Where a job's chain first does not hold, in words; undefined when it holds. */
export async function verifyChain(db: Kysely<Schema>, job: string): Promise<string | undefined> {
	return chainFault(await rowsOf(db, job, 0));
}

const rowsOf = (db: Kysely<Schema>, job: string, after: number): Promise<Selectable<EntryRow>[]> =>
	db
		.selectFrom("entry")
		.selectAll()
		.where("job", "=", job)
		.where("place", ">", after)
		.orderBy("place")
		.execute();

function entryOf(row: Selectable<EntryRow>): Entry {
	const { id, place, time, stored, person, kind, body, previous, hash } = row;
	// Only what fits its kind was let in, and the rows are never changed.
	return { id, place, time, stored, person, kind, body: JSON.parse(body), previous, hash } as Entry;
}

import type { Kysely, Selectable, Transaction } from "kysely";
import { tellOthers } from "../driver/news.js";
import { StoreError } from "../error.js";
import { holdJob } from "../jobs.js";
import type { EntryRow, Schema } from "../schema.js";
import { checkStorable } from "../storable.js";
import { chainFault, entryHash, FORM, sortedJson } from "./hash.js";
import type { Kept } from "./kinds.js";

/** By what right an entry was written, as it was then. */
export interface Standing {
	/** `bench`: nobody has to sign in on this machine. */
	readonly role: "owner" | "technician" | "apprentice" | "bench";
	/** Sort of the step it is about, where it is about one. */
	readonly sort?: string | undefined;
	/** Of a sign-off: whether the person may sign such a step alone. */
	readonly ability?: "alone" | "second" | undefined;
}

/** A stored entry. */
export type Entry = Kept & {
	readonly id: string;
	readonly place: number;
	readonly time: string;
	readonly stored: string;
	readonly person: string;
	readonly account: string;
	readonly device: string;
	readonly counter: number;
	readonly seen: number;
	readonly standing: Standing | null;
	readonly previous: string;
	readonly hash: string;
};

/** An entry to be stored: who, what, and when it happened (ISO 8601, UTC; left out: now). */
export type NewEntry = Kept & {
	readonly id: string;
	readonly time?: string | undefined;
	readonly person: string;
	readonly account?: string | undefined;
	readonly device?: string | undefined;
	readonly counter?: number | undefined;
	/** Left out: all there is. */
	readonly seen?: number | undefined;
	readonly standing?: Standing | undefined;
};

/** Already there under this id, with other content. */
export class EntryClash extends StoreError {}

/**
 * Adds an entry to the end of a job's chain. The same entry sent twice is stored once.
 * @param stored when it is stored, ISO 8601, UTC
 * @throws EntryClash when the id is taken by another entry
 * @throws StoreError when there is no such job
 * @throws Unstorable when a text would not come back from the database as it is
 */
export async function appendEntry(
	trx: Transaction<Schema>,
	job: string,
	entry: NewEntry,
	stored: string,
): Promise<{ entry: Entry; added: boolean }> {
	const { id, person, kind, account = "", device = "", counter = 0 } = entry;
	checkStorable(entry);
	const time = entry.time ?? stored;
	const body = sortedJson(entry.body);
	const { chain } = await holdJob(trx, job);
	const there = await trx.selectFrom("entry").selectAll().where("id", "=", id).executeTakeFirst();
	if (there) {
		// What the server adds of its own, and the name a person goes by, may differ the second time.
		const writer = account === "" ? there.person === person : there.account === account;
		const same =
			there.job === job &&
			writer &&
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
	const before = last?.place ?? 0;
	const covered = {
		id,
		job,
		place: before + 1,
		time,
		stored,
		person,
		kind,
		body,
		previous: last?.hash ?? "",
		form: FORM,
		account,
		device,
		counter,
		seen: Math.min(entry.seen ?? before, before),
		standing: entry.standing === undefined ? "" : sortedJson(entry.standing),
	};
	const row = await trx
		.insertInto("entry")
		.values({ ...covered, hash: entryHash({ ...covered, job: chain }) })
		.returningAll()
		.executeTakeFirstOrThrow();
	await tellOthers(trx, { job, place: row.place });
	return { entry: entryOf(row), added: true };
}

/** An entry by its id. */
export async function findEntry(db: Kysely<Schema>, id: string): Promise<Entry | undefined> {
	const row = await db.selectFrom("entry").selectAll().where("id", "=", id).executeTakeFirst();
	return row && entryOf(row);
}

/** A job's entries in order, those after a place. */
export async function entriesOf(db: Kysely<Schema>, job: string, after = 0): Promise<Entry[]> {
	const rows = await rowsOf(db, job, after);
	return rows.map(entryOf);
}

/** The entries of some kinds by job and place; of every job unless one is named. */
export async function entriesOfKinds(
	db: Kysely<Schema>,
	kinds: readonly Kept["kind"][],
	job?: string,
): Promise<Map<string, Entry[]>> {
	const rows = await db
		.selectFrom("entry")
		.selectAll()
		.where("kind", "in", kinds)
		.$if(job !== undefined, (query) => query.where("job", "=", job ?? ""))
		.orderBy("job")
		.orderBy("place")
		.execute();
	const byJob = new Map<string, Entry[]>();
	for (const row of rows) {
		const list = byJob.get(row.job);
		if (list) list.push(entryOf(row));
		else byJob.set(row.job, [entryOf(row)]);
	}
	return byJob;
}

/** What a job's history has after a place. */
export interface Later {
	readonly entries: readonly Entry[];
	/** Hash of the entry at that place; empty: there is none. */
	readonly link: string;
	/** Where the chain from there on does not hold, in words; undefined when it holds. */
	readonly fault: string | undefined;
}

/** @param chain the job's name in its hashes */
export async function historyAfter(
	db: Kysely<Schema>,
	job: string,
	chain: string,
	after = 0,
): Promise<Later> {
	const rows = await rowsOf(db, job, Math.max(0, after - 1));
	const [from] = after > 0 && rows[0]?.place === after ? rows.splice(0, 1) : [];
	return { entries: rows.map(entryOf), link: from?.hash ?? "", fault: chainFault(rows, chain, from) };
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
	const { id, place, time, stored, person, account, device, counter, seen, kind, previous, hash } = row;
	const body: unknown = JSON.parse(row.body);
	const standing: Standing | null = row.standing === "" ? null : JSON.parse(row.standing);
	// Only what fits its kind was let in, and the rows are never changed.
	return {
		...{ id, place, time, stored, person, account, device, counter, seen, standing },
		...{ kind, body, previous, hash },
	} as Entry;
}

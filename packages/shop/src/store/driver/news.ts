/**
 * What one server enters, the others on the same PostgreSQL database hear: NOTIFY within the entry's transaction, so
 * that it comes if and only if the entry is there (PostgreSQL manual, NOTIFY). A connection of its own listens.
 */
import { type Kysely, sql } from "kysely";
import pg from "pg";
import type { Schema } from "../schema.js";
import { isPostgres } from "./open.js";

/** That a job's history grew. */
export interface News {
	readonly job: string;
	/** Place of the newest entry. */
	readonly place: number;
}

export interface Hearing {
	readonly heard: (news: News) => void;
	/** The connection was lost and is back: there may be news that nobody heard. */
	readonly missed: () => void;
}

const CHANNEL = "loomwright_entry";

/** How long until a lost connection is tried again, and how often a silent one is asked whether it is there, in ms. */
const AGAIN_MS = 2000;
const ASK_MS = 30_000;

/** Nothing on the embedded database: one server has it alone. */
export async function tellOthers(db: Kysely<Schema>, news: News): Promise<void> {
	if (isPostgres(db)) await sql`select pg_notify(${CHANNEL}, ${JSON.stringify(news)})`.execute(db);
}

/**
 * Listens until it is stopped; a connection that breaks is made anew, as often as it takes.
 * @param url of the database
 * @returns how to stop, once it listens or has tried once in vain
 */
export async function hearOthers(url: string, { heard, missed }: Hearing): Promise<() => Promise<void>> {
	let client: pg.Client | undefined;
	let again: NodeJS.Timeout | undefined;
	let stopped = false;

	const lost = (broken: pg.Client) => {
		if (client !== broken) return;
		client = undefined;
		broken.end().catch(() => {});
		if (!stopped) again = setTimeout(() => void connect().then(missed, () => {}), AGAIN_MS).unref();
	};

	async function connect(): Promise<void> {
		const own = new pg.Client({ connectionString: url, connectionTimeoutMillis: 5000, query_timeout: 5000 });
		client = own;
		own.on("error", () => lost(own));
		own.on("end", () => lost(own));
		own.on("notification", ({ payload = "" }) => {
			const news = newsOf(payload);
			if (news) heard(news);
		});
		try {
			await own.connect();
			await own.query(`listen ${CHANNEL}`);
		} catch (error) {
			lost(own);
			throw error;
		}
	}

	await connect().catch(() => {});
	// A connection whose other end is gone without a word is found by asking.
	const ask = setInterval(() => {
		const own = client;
		own?.query("select 1").catch(() => lost(own));
	}, ASK_MS).unref();
	return async () => {
		stopped = true;
		clearInterval(ask);
		clearTimeout(again);
		const own = client;
		client = undefined;
		await own?.end().catch(() => {});
	};
}

/** Undefined for what no server of this kind sent. */
function newsOf(payload: string): News | undefined {
	try {
		const { job, place } = JSON.parse(payload) as Partial<News>;
		return typeof job === "string" && typeof place === "number" ? { job, place } : undefined;
	} catch {
		return undefined;
	}
}

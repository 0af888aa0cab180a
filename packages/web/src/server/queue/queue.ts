/** Sends what waits on this tablet, in its order, as often as it takes; the server stores each entry once. */
import { newId, ServerFault, sendQueue } from "../api.js";
import type { NewEntry, Waiting, Writable } from "../types.js";
import { change, forget, keep, kept } from "./database.js";

export interface QueueState {
	readonly waiting: readonly Waiting[];
	readonly sending: boolean;
	/** Why the last sending did not get through. */
	readonly fault: Error | undefined;
}

let state: QueueState = { waiting: [], sending: false, fault: undefined };
const watchers = new Set<() => void>();

function become(next: Partial<QueueState>): void {
	state = { ...state, ...next };
	for (const watcher of watchers) watcher();
}

export const queueState = (): QueueState => state;

export function watchQueue(watcher: () => void): () => void {
	watchers.add(watcher);
	return () => void watchers.delete(watcher);
}

export interface Writer {
	readonly person: string;
	/** Empty where nobody signs in. */
	readonly account: string;
}

/** Keeps what was written on the tablet; returns its id. */
export async function write(job: string, written: Writable, by: Writer, seen: number): Promise<string> {
	const id = newId();
	const time = new Date().toISOString();
	const entry = { ...written, id, time, person: by.person, account: by.account, seen };
	await keep({ job, refused: "", toDo: "" }, entry as Omit<NewEntry, "device" | "counter">, newId());
	become({ waiting: await kept() });
	return id;
}

/** How many are sent at once. */
const BATCH = 100;

let running: Promise<readonly string[]> | undefined;

/**
 * Sends what the person signed in has waiting; others' entries wait for them.
 * @param account of whom is signed in; empty where nobody signs in
 * @returns ids of the jobs that got entries
 */
export function flush(account: string): Promise<readonly string[]> {
	running ??= sendAll(account).finally(() => {
		running = undefined;
	});
	return running;
}

async function sendAll(account: string): Promise<readonly string[]> {
	const jobs = new Set<string>();
	try {
		for (;;) {
			const waiting = await kept();
			become({ waiting });
			const own = waiting.filter(({ entry, refused }) => entry.account === account && refused === "");
			const first = own[0];
			if (!first) break;
			become({ sending: true });
			const batch = own.filter(({ job }) => job === first.job).slice(0, BATCH);
			await send(first.job, batch);
			jobs.add(first.job);
		}
		become({ sending: false, fault: undefined });
	} catch (error) {
		become({ sending: false, fault: error instanceof Error ? error : new Error(String(error)) });
	}
	return [...jobs];
}

async function send(job: string, batch: readonly Waiting[]): Promise<void> {
	const results = await sendQueue(
		job,
		batch.map(({ entry }) => entry),
	);
	for (const one of batch) {
		const result = results.find(({ id }) => id === one.entry.id);
		if (!result) throw new ServerFault("the server did not answer for every entry", "Send them again.", true);
		if (result.outcome === "refused") await change({ ...one, refused: result.error, toDo: result.toDo });
		else await forget(one.order);
	}
}

/** Takes away an entry that the server refused. */
export async function drop(order: number): Promise<void> {
	await forget(order);
	become({ waiting: await kept() });
}

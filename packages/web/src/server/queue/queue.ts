/** Sends what waits on this tablet, in its order, as often as it takes; the server stores each entry once. */
import { newId, ServerFault, sendPhoto, sendQueue } from "../api.js";
import type { NewEntry, QueueResult, Waiting, Writable } from "../types.js";
import { change, forget, keep, kept } from "./waiting.js";

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
export async function write(
	job: string,
	written: Writable,
	by: Writer,
	seen: number,
	picture?: Blob,
): Promise<string> {
	const id = newId();
	const time = new Date().toISOString();
	const entry = { ...written, id, time, person: by.person, account: by.account, seen };
	const waiting = { job, refused: "", toDo: "", ...(picture ? { picture } : {}) };
	await keep(waiting, entry as Omit<NewEntry, "device" | "counter">, newId());
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

/** What the server says of an entry itself, not of who sends it or when: sending it again would not help. */
const NEVER = new Set([400, 413, 415, 422]);

async function send(job: string, batch: readonly Waiting[]): Promise<void> {
	try {
		const ready = [];
		for (const one of batch) ready.push(await withoutPicture(one));
		const entries = ready.map(({ entry }) => entry);
		await settle(ready, await sendQueue(job, entries));
	} catch (error) {
		if (!(error instanceof ServerFault) || !NEVER.has(error.status)) throw error;
		// One that cannot be stored must not hold up the others.
		const [first, ...others] = batch;
		if (others.length > 0) for (const one of batch) await send(job, [one]);
		else if (first) await change({ ...first, refused: error.message, toDo: error.toDo });
	}
}

/** Sends the picture of a photo, so that its entry can name it. */
async function withoutPicture(one: Waiting): Promise<Waiting> {
	const { picture, ...rest } = one;
	if (!picture || one.entry.kind !== "photo") return one;
	const photo = await sendPhoto(one.job, picture);
	const sent: Waiting = { ...rest, entry: { ...one.entry, body: { ...one.entry.body, photo } } };
	await change(sent);
	return sent;
}

async function settle(batch: readonly Waiting[], results: readonly QueueResult[]): Promise<void> {
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

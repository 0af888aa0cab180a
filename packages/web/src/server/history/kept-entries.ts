/** The histories this tablet last had, so that after a reload it asks only for what is new, and has them without a network. */
import { answer, database, ENTRIES, finished } from "../kept/database.js";
import type { Entry } from "../types.js";

const ofJob = (job: string) => IDBKeyRange.bound([job, 0], [job, Number.POSITIVE_INFINITY]);

/** In order of place; none where this browser keeps nothing. */
export async function keptEntries(job: string): Promise<readonly Entry[]> {
	try {
		const transaction = (await database()).transaction(ENTRIES, "readonly");
		return (await answer(transaction.objectStore(ENTRIES).getAll(ofJob(job)))) as Entry[];
	} catch {
		return [];
	}
}

/** Keeps these beside those kept, or in place of them. A full tablet keeps none of them, and asks again after a reload. */
export async function keepEntries(job: string, entries: readonly Entry[], instead: boolean): Promise<void> {
	try {
		const transaction = (await database()).transaction(ENTRIES, "readwrite");
		const done = finished(transaction);
		const store = transaction.objectStore(ENTRIES);
		if (instead) store.delete(ofJob(job));
		for (const entry of entries) store.put(entry, [job, entry.place]);
		await done;
	} catch (error) {
		console.warn("the history is not kept on this tablet:", error);
	}
}

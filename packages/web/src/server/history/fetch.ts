/** Fetches what a job's history has after what this tablet has of it. */
import { readEntries, ServerFault } from "../api.js";
import { EMPTY, grown, type History, replaced } from "./grow.js";
import { keepEntries, keptEntries } from "./kept-entries.js";

/**
 * @param shown what the screen has; undefined: nothing yet
 * @throws ServerFault when the server refuses, or is away and nothing is kept
 */
export async function fetchHistory(job: string, shown: History | undefined): Promise<History> {
	const known = shown ?? { entries: await keptEntries(job), fault: null };
	try {
		const came = await readEntries(job, known.entries.at(-1)?.place ?? 0);
		const history = grown(known, came);
		if (!history) return await fetchAnew(job, known);
		// What has a fault is asked for whole after the next reload, so that the fault shows again.
		if (history.fault !== null) await keepEntries(job, [], true);
		else if (came.entries.length > 0) await keepEntries(job, came.entries, false);
		return history;
	} catch (error) {
		if (error instanceof ServerFault && error.away && known.entries.length > 0) return known;
		throw error;
	}
}

async function fetchAnew(job: string, known: History): Promise<History> {
	const all = grown(EMPTY, await readEntries(job, 0)) ?? EMPTY;
	await keepEntries(job, all.fault === null ? all.entries : [], true);
	return replaced(known, all);
}

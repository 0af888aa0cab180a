/** What of a history still stands: an entry that a correction takes back stays, and no longer counts. */
import type { Entry } from "../types.js";
import type { History } from "./grow.js";

/**
 * Ids of entries taken back, each with its correction. A correction that is itself taken back takes nothing back.
 * @param entries in order of place; a correction comes after what it takes back
 */
export function takenBack(entries: readonly Entry[]): ReadonlyMap<string, Entry> {
	const found = new Map<string, Entry>();
	for (const entry of entries.toReversed())
		if (entry.kind === "correction" && !found.has(entry.id))
			found.set((entry.body as { of: string }).of, entry);
	return found;
}

/** The entries that count. */
export function standing({ entries }: History): readonly Entry[] {
	const back = takenBack(entries);
	return entries.filter(({ id, kind }) => kind !== "correction" && !back.has(id));
}

/** A job's history as a tablet has it, and how it grows by what comes after. */
import type { Entries } from "../api.js";
import type { Entry } from "../types.js";

export interface History {
	/** All of them, oldest first. */
	readonly entries: readonly Entry[];
	/** Where it is not as it was written, or not what this tablet had before; null: it stands. */
	readonly fault: string | null;
}

export const EMPTY: History = { entries: [], fault: null };

/**
 * The history with what came after it; undefined where the server's is another one, so that all of it must be asked for.
 * @param came the answer to asking after the last place of `known`
 */
export function grown(known: History, came: Entries): History | undefined {
	const last = known.entries.at(-1);
	if (last && came.link !== last.hash) return undefined;
	return {
		entries: [...known.entries, ...came.entries],
		fault: known.fault ?? came.fault ?? broken(last?.hash ?? "", came.entries),
	};
}

/** Where the links do not join, whatever the server says of them. */
function broken(previous: string, entries: readonly Entry[]): string | null {
	for (const [k, entry] of entries.entries())
		if (entry.previous !== (k === 0 ? previous : entries[k - 1]!.hash))
			return `entry ${entry.place} does not follow the one before it`;
	return null;
}

/** The server's history in place of one it does not have any more. */
export function replaced(known: History, all: History): History {
	const lost = known.entries.filter(({ hash }, k) => all.entries[k]?.hash !== hash);
	const first = lost[0]?.place ?? 0;
	const was =
		`the server's history is not the one this tablet had: from entry ${first} on ${lost.length} of this tablet's ` +
		"are not in it. Was an older backup restored?";
	return { entries: all.entries, fault: all.fault ?? was };
}

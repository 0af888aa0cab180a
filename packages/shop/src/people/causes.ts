/**
 * What came before what, by what each writer had seen; clocks have no say. The partial order is that of
 * L. Lamport, "Time, Clocks, and the Ordering of Events in a Distributed System" (CACM 21, 1978): on one
 * tablet by its own count, between tablets by what had been received.
 */

/** What is known of an entry's causes. */
export interface Caused {
	/** In the job's chain, from 1. */
	readonly place: number;
	/** Empty: not given. */
	readonly device: string;
	/** The tablet's own count; 0: not given. */
	readonly counter: number;
	/** The last place the writer had seen. */
	readonly seen: number;
}

/** Whether `later` was written by someone who knew of `earlier`. */
export function knew(later: Caused, earlier: Caused): boolean {
	if (later.place === earlier.place) return false;
	if (sameTablet(later, earlier)) return later.counter > earlier.counter;
	return later.seen >= earlier.place;
}

/** Neither writer knew of the other's entry. */
export const apart = (a: Caused, b: Caused): boolean => a.place !== b.place && !knew(a, b) && !knew(b, a);

/**
 * Entries, given in order of place, so that what a tablet wrote first comes first even where its sending came in
 * another order. Cost O(entries log entries).
 */
export function inCausalOrder<E extends Caused>(entries: readonly E[]): E[] {
	const byTablet = new Map<string, E[]>();
	for (const entry of entries)
		if (counted(entry)) byTablet.set(entry.device, [...(byTablet.get(entry.device) ?? []), entry]);
	for (const list of byTablet.values()) list.sort((a, b) => a.counter - b.counter || a.place - b.place);
	const next = new Map<string, number>();
	const done = new Set<E>();
	const ordered: E[] = [];
	for (const entry of entries) {
		if (done.has(entry)) continue;
		const own = counted(entry) ? byTablet.get(entry.device)! : [entry];
		let at = counted(entry) ? (next.get(entry.device) ?? 0) : 0;
		// The tablet's earlier entries, then this one.
		for (let found = false; !found; at += 1) {
			found = own[at] === entry;
			ordered.push(own[at]!);
			done.add(own[at]!);
		}
		next.set(entry.device, at);
	}
	return ordered;
}

const counted = ({ device, counter }: Caused): boolean => device !== "" && counter > 0;

const sameTablet = (a: Caused, b: Caused): boolean => counted(a) && counted(b) && a.device === b.device;

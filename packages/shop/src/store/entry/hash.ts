/**
 * The chain of a job's history: each entry's hash covers the one before it, so that an entry changed,
 * dropped or put between later shows. SHA-256 after FIPS 180-4.
 */
import { createHash } from "node:crypto";
import type { EntryRow } from "../schema.js";

/** What the hash covers, in this order; `job` stands for the name of the job's chain. */
const FIRST = ["job", "place", "id", "time", "stored", "person", "kind", "body", "previous"] as const;
const SECOND = [...FIRST, "form", "account", "device", "counter", "seen", "standing"] as const;

/** The form new entries are written in. */
export const FORM = 2;

export type Covered = Pick<EntryRow, (typeof SECOND)[number]>;

/** Hash of an entry, hexadecimal: SHA-256 of the JSON array of what it covers, as UTF-8. */
export function entryHash(entry: Covered): string {
	const names = entry.form === 1 ? FIRST : SECOND;
	return createHash("sha256")
		.update(JSON.stringify(names.map((name) => entry[name])), "utf8")
		.digest("hex");
}

/** JSON with the keys of every object sorted: equal values give equal text. */
export function sortedJson(value: unknown): string {
	return JSON.stringify(value, (_key, inner: unknown) =>
		inner !== null && typeof inner === "object" && !Array.isArray(inner)
			? Object.fromEntries(Object.entries(inner).sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0)))
			: inner,
	);
}

export type Link = Covered & { readonly hash: string };

/**
 * Where a job's chain, in order of place, first does not hold, in words; undefined when it holds. Cost O(entries).
 * @param chain the job's name in its hashes
 * @param from the entry before the first; left out: the first is the job's first
 */
export function chainFault(entries: readonly Link[], chain: string, from?: Link): string | undefined {
	let previous = from?.hash ?? "";
	const first = (from?.place ?? 0) + 1;
	for (const [at, entry] of entries.entries()) {
		if (entry.place !== first + at) return `entry ${first + at} is missing`;
		if (entry.previous !== previous) return `entry ${entry.place} does not follow the one before it`;
		if (entryHash({ ...entry, job: chain }) !== entry.hash)
			return `entry ${entry.place} is not as it was written`;
		previous = entry.hash;
	}
	return undefined;
}

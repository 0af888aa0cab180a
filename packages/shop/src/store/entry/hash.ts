/**
 * The chain of a job's history: each entry's hash covers the one before it, so that an entry changed,
 * dropped or put between later shows. SHA-256 after FIPS 180-4.
 */
import { createHash } from "node:crypto";
import type { EntryRow } from "../schema.js";

/** What the hash covers, in this order. */
const COVERED = ["job", "place", "id", "time", "stored", "person", "kind", "body", "previous"] as const;

export type Covered = Pick<EntryRow, (typeof COVERED)[number]>;

/** Hash of an entry, hexadecimal: SHA-256 of the JSON array of what it covers, as UTF-8. */
export function entryHash(entry: Covered): string {
	return createHash("sha256")
		.update(JSON.stringify(COVERED.map((name) => entry[name])), "utf8")
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

/** Where a job's chain, in order of place, first does not hold, in words; undefined when it holds. Cost O(entries). */
export function chainFault(entries: readonly (Covered & { readonly hash: string })[]): string | undefined {
	let previous = "";
	for (const [at, entry] of entries.entries()) {
		if (entry.place !== at + 1) return `entry ${at + 1} is missing`;
		if (entry.previous !== previous) return `entry ${entry.place} does not follow the one before it`;
		if (entryHash(entry) !== entry.hash) return `entry ${entry.place} is not as it was written`;
		previous = entry.hash;
	}
	return undefined;
}

/** How many photos a tablet keeps. */

/** Pictures kept on a tablet, over all jobs, in bytes: some hundred photos. */
export const PHOTO_BYTES = 200 * 1024 * 1024;

export interface PhotoSize {
	readonly job: string;
	readonly photo: string;
	/** When the server stored it, ISO 8601, UTC. */
	readonly stored: string;
	readonly bytes: number;
}

/** The photos to let go so that the others stay within the bound: the oldest first. Cost O(n log n). */
export function beyond(kept: readonly PhotoSize[], bound: number): PhotoSize[] {
	const oldestFirst = [...kept].sort((a, b) => (a.stored < b.stored ? -1 : a.stored > b.stored ? 1 : 0));
	let total = kept.reduce((sum, { bytes }) => sum + bytes, 0);
	const out: PhotoSize[] = [];
	for (const one of oldestFirst) {
		if (total <= bound) break;
		out.push(one);
		total -= one.bytes;
	}
	return out;
}

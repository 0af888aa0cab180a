/**
 * Letters that must be changed, added, dropped or swapped with the next to turn one word into the other.
 * Above `most` it is not counted out: any number above `most` may come back.
 */
export function editDistance(from: string, to: string, most = Number.POSITIVE_INFINITY): number {
	// Optimal string alignment, three rows: d[i][j] from d[i-1], d[i-2].
	let before: number[] = [];
	let above = Array.from({ length: to.length + 1 }, (_, j) => j);
	for (let i = 1; i <= from.length; i++) {
		const row = [i];
		let least = i;
		for (let j = 1; j <= to.length; j++) {
			const same = from[i - 1] === to[j - 1];
			let best = Math.min(above[j]! + 1, row[j - 1]! + 1, above[j - 1]! + (same ? 0 : 1));
			if (i > 1 && j > 1 && from[i - 1] === to[j - 2] && from[i - 2] === to[j - 1]) {
				best = Math.min(best, before[j - 2]! + 1);
			}
			row.push(best);
			least = Math.min(least, best);
		}
		// A swap reaches back two rows, so one row above the limit is not yet the end.
		if (least > most + 1) return least;
		before = above;
		above = row;
	}
	return above[to.length]!;
}

/** The known name most like this one, letter case aside, if it is near enough to be meant (a third of its letters). */
export function nearestName(name: string, known: Iterable<string>): string | undefined {
	const word = name.toLowerCase();
	let nearest: string | undefined;
	let least = Math.max(1, Math.floor(word.length / 3)) + 1;
	for (const candidate of known) {
		if (Math.abs(candidate.length - word.length) >= least) continue;
		// Of two as near, the one of the same length: a swapped or mistyped letter is likelier than a lost one.
		const distance =
			editDistance(word, candidate.toLowerCase(), least) + (candidate.length === word.length ? 0 : 0.5);
		if (distance < least) [nearest, least] = [candidate, distance];
	}
	return nearest;
}

/** `otherwise`, led by the nearest known name where there is one: what is wanted in place of an unknown name. */
export function didYouMean(name: string, known: Iterable<string>, otherwise: string): string {
	const nearest = nearestName(name, known);
	return nearest === undefined ? otherwise : `${nearest}, perhaps; ${otherwise}`;
}

/** A good cover: greedy, then columns exchanged as long as that saves one. */
import { type CoverProblem, rowsOfColumns } from "./problem.js";

/**
 * The column that covers most of what is still bare, weighed by the rows' prices; at the end those not needed go.
 * @param prices how hard each row is to cover
 * @param rank of equal columns the one of lower rank is taken
 */
export function greedyCover(
	problem: CoverProblem,
	prices: ArrayLike<number>,
	rank: (column: number) => number,
): number[] {
	const { rows, columns } = problem;
	const covers = rowsOfColumns(problem);
	const bare = new Uint8Array(rows.length).fill(1);
	let left = rows.length;
	const chosen: number[] = [];
	while (left > 0) {
		let best = -1;
		let most = 0;
		for (let c = 0; c < columns; c++) {
			let gain = 0;
			for (const r of covers[c]!) if (bare[r] === 1) gain += prices[r]! + 1e-9;
			if (gain > most + 1e-12 || (gain > most - 1e-12 && best >= 0 && gain > 0 && rank(c) < rank(best))) {
				best = c;
				most = gain;
			}
		}
		if (best < 0) throw new RangeError("a row has no column");
		chosen.push(best);
		for (const r of covers[best]!) {
			left -= bare[r]!;
			bare[r] = 0;
		}
	}
	return needed(problem, chosen, rank);
}

/** The chosen columns without those whose rows the others cover; of these the least convenient go first. */
export function needed(
	problem: CoverProblem,
	chosen: readonly number[],
	rank: (column: number) => number,
): number[] {
	const covers = rowsOfColumns(problem);
	const times = new Int32Array(problem.rows.length);
	for (const c of chosen) for (const r of covers[c]!) times[r]! += 1;
	const kept = new Set(chosen);
	for (const c of [...chosen].sort((x, y) => covers[x]!.length - covers[y]!.length || rank(y) - rank(x))) {
		if (!covers[c]!.every((r) => times[r]! > 1)) continue;
		kept.delete(c);
		for (const r of covers[c]!) times[r]! -= 1;
	}
	return [...kept].sort((x, y) => x - y);
}

/**
 * Takes two columns out and tries one in their place, until no two can be replaced. Cost per round: pairs of columns
 * that share a candidate for both.
 */
export function exchanged(
	problem: CoverProblem,
	start: readonly number[],
	rank: (column: number) => number,
): number[] {
	const covers = rowsOfColumns(problem);
	let chosen = [...start];
	for (;;) {
		const saved = oneForTwo(problem, covers, chosen);
		if (saved === undefined) return chosen;
		chosen = needed(problem, saved, rank);
	}
}

function oneForTwo(
	{ rows }: CoverProblem,
	covers: readonly (readonly number[])[],
	chosen: readonly number[],
): number[] | undefined {
	const by = rows.map(() => [] as number[]);
	for (const c of chosen) for (const r of covers[c]!) by[r]!.push(c);
	/** Rows that lose their cover when both columns go. */
	const loses = (x: number, y: number) =>
		[...new Set([...covers[x]!, ...covers[y]!])].filter((r) => by[r]!.every((c) => c === x || c === y));
	for (const x of chosen) {
		const own = covers[x]!.filter((r) => by[r]!.length === 1);
		if (own.length === 0) return chosen.filter((c) => c !== x);
		// Whatever stands in for x covers the hardest of its own rows.
		const hardest = own.reduce((best, r) => (rows[r]!.length < rows[best]!.length ? r : best));
		for (const instead of rows[hardest]!) {
			if (instead === x) continue;
			const has = new Set(covers[instead]!);
			if (!own.every((r) => has.has(r))) continue;
			const others = new Set(covers[instead]!.flatMap((r) => by[r]!));
			for (const y of others)
				if (y !== x && y !== instead && loses(x, y).every((r) => has.has(r)))
					return [...chosen.filter((c) => c !== x && c !== y), instead];
		}
	}
	return undefined;
}

/** The least cover by branch and bound, as far as a number of nodes allows. */
import { type CoverProblem, rowsOfColumns } from "./problem.js";

export interface Exact {
	readonly chosen: readonly number[];
	/** False where the search was cut off: `chosen` is then the best known. */
	readonly proved: boolean;
}

/**
 * Branches on the bare row with the fewest columns: one of them is in every cover. A branch ends where rows that
 * share no column, or prices of a dual solution, show that it cannot be smaller.
 *
 * @param known a cover to beat
 * @param prices from `lagrangianBound`
 * @param nodes most nodes searched
 */
export function exactCover(
	problem: CoverProblem,
	known: readonly number[],
	prices: Float64Array,
	nodes: number,
): Exact {
	const { rows } = problem;
	const covers = rowsOfColumns(problem);
	const dual = feasible(prices, covers);
	let best = known;
	let left = nodes;
	const times = new Int32Array(rows.length);
	const banned = new Uint8Array(problem.columns);
	const chosen: number[] = [];
	const search = (): void => {
		if (left-- <= 0) return;
		let bound = 0;
		let branch = -1;
		let fewest = Number.POSITIVE_INFINITY;
		for (let r = 0; r < rows.length; r++) {
			if (times[r]! > 0) continue;
			bound += dual[r]!;
			let ways = 0;
			for (const c of rows[r]!) ways += 1 - banned[c]!;
			if (ways < fewest) {
				fewest = ways;
				branch = r;
			}
		}
		if (branch < 0) {
			if (chosen.length < best.length) best = [...chosen].sort((x, y) => x - y);
			return;
		}
		if (chosen.length + Math.max(1, Math.ceil(bound - 1e-6)) >= best.length) return;
		const ways = rows[branch]!.filter((c) => banned[c] === 0);
		const gain = (c: number) => covers[c]!.reduce((sum, r) => sum + (times[r] === 0 ? 1 : 0), 0);
		ways.sort((x, y) => gain(y) - gain(x));
		for (const c of ways) {
			chosen.push(c);
			for (const r of covers[c]!) times[r]! += 1;
			search();
			for (const r of covers[c]!) times[r]! -= 1;
			chosen.pop();
			// Covers with c have all been seen: it is left out of the branches that follow.
			banned[c] = 1;
		}
		for (const c of ways) banned[c] = 0;
	};
	search();
	return { chosen: best, proved: left >= 0 };
}

/** Prices scaled down, row by row, until no column's rows cost more than the column: a solution of the dual. */
function feasible(prices: Float64Array, covers: readonly (readonly number[])[]): Float64Array {
	const scale = new Float64Array(prices.length).fill(1);
	for (const own of covers) {
		let sum = 0;
		for (const r of own) sum += prices[r]!;
		if (sum > 1) for (const r of own) scale[r] = Math.min(scale[r]!, 1 / sum);
	}
	return prices.map((price, r) => price * scale[r]!);
}

/**
 * The fewest columns that cover every row: reduced, split into parts that share no column, each part solved by
 * branch and bound where that ends soon, else by a priced greedy cover with exchanges and a Lagrangian bound.
 */
import { lagrangianBound } from "./bound.js";
import { exactCover } from "./exact.js";
import { exchanged, greedyCover } from "./greedy.js";
import type { CoverProblem, CoverResult } from "./problem.js";
import { reduce } from "./reduce.js";

export interface CoverOptions {
	/** Of two columns as good, the one of lower rank is taken. Default: the lower number. */
	readonly rank?: (column: number) => number;
	/** Most nodes of the search in each part. Default 20000. */
	readonly nodes?: number;
}

/** Rows without a column are passed over. */
export function cover(problem: CoverProblem, options: CoverOptions = {}): CoverResult {
	const rank = options.rank ?? ((column: number) => column);
	const { forced, rows } = reduce(problem, rank);
	const chosen = [...forced];
	let lowerBound = forced.length;
	for (const part of parts(rows)) {
		const solved = solvePart(part, rank, options.nodes ?? 20_000);
		chosen.push(...solved.chosen);
		lowerBound += solved.lowerBound;
	}
	return { chosen: chosen.sort((x, y) => x - y), lowerBound };
}

/** Rows that hang together by shared columns. */
function parts(rows: readonly (readonly number[])[]): (readonly number[])[][] {
	const first = new Map<number, number>();
	const parent = rows.map((_, r) => r);
	const root = (r: number): number => {
		let at = r;
		while (parent[at] !== at) {
			parent[at] = parent[parent[at]!]!;
			at = parent[at]!;
		}
		return at;
	};
	rows.forEach((row, r) => {
		for (const column of row) {
			const other = first.get(column);
			if (other === undefined) first.set(column, r);
			else parent[root(r)] = root(other);
		}
	});
	const groups = new Map<number, (readonly number[])[]>();
	rows.forEach((row, r) => {
		const group = groups.get(root(r));
		if (group) group.push(row);
		else groups.set(root(r), [row]);
	});
	return [...groups.values()];
}

function solvePart(
	rows: readonly (readonly number[])[],
	rank: (column: number) => number,
	nodes: number,
): CoverResult {
	const names = [...new Set(rows.flat())].sort((x, y) => x - y);
	const index = new Map(names.map((name, k) => [name, k]));
	const problem: CoverProblem = {
		rows: rows.map((row) => row.map((column) => index.get(column)!)),
		columns: names.length,
	};
	const own = (column: number) => rank(names[column]!);
	const flat = new Float64Array(rows.length).fill(1);
	let best = exchanged(problem, greedyCover(problem, flat, own), own);
	const bound = lagrangianBound(problem, best.length);
	const priced = exchanged(problem, greedyCover(problem, bound.prices, own), own);
	if (priced.length < best.length) best = priced;
	let lowerBound = Math.max(1, Math.ceil(bound.value - 1e-6));
	if (lowerBound < best.length) {
		const exact = exactCover(problem, best, bound.prices, nodes);
		best = [...exact.chosen];
		if (exact.proved) lowerBound = best.length;
	}
	return { chosen: best.map((column) => names[column]!), lowerBound };
}

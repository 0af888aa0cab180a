/** Covers by trying every set of columns: up to some 16 of them. */
import type { CoverProblem } from "./problem.js";

/** Least number of columns that cover every row that has one. */
export function leastCover({ rows, columns }: CoverProblem): number {
	const wanted = rows
		.filter((row) => row.length > 0)
		.map((row) => row.reduce((mask, c) => mask | (1 << c), 0));
	let least = columns;
	for (let set = 0; set < 1 << columns; set++) {
		const size = ones(set);
		if (size < least && wanted.every((row) => (row & set) !== 0)) least = size;
	}
	return least;
}

function ones(set: number): number {
	let count = 0;
	for (let left = set; left !== 0; left &= left - 1) count++;
	return count;
}

/** Does every row that has a column have a chosen one? */
export function covers({ rows }: CoverProblem, chosen: readonly number[]): boolean {
	const set = new Set(chosen);
	return rows.every((row) => row.length === 0 || row.some((column) => set.has(column)));
}

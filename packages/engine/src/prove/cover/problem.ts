/**
 * Set covering: the fewest columns such that every row has one of its own.
 *
 * Rows stand for what must be caught, columns for the readings that catch it.
 */

export interface CoverProblem {
	/** For each row the columns that cover it, ascending. */
	readonly rows: readonly (readonly number[])[];
	/** Number of columns. */
	readonly columns: number;
}

export interface CoverResult {
	/** Chosen columns, ascending. */
	readonly chosen: readonly number[];
	/** No cover has fewer columns than this. */
	readonly lowerBound: number;
}

/** The rows of each column. */
export function rowsOfColumns({ rows, columns }: CoverProblem): number[][] {
	const result: number[][] = Array.from({ length: columns }, () => []);
	rows.forEach((list, row) => {
		for (const column of list) result[column]!.push(row);
	});
	return result;
}

/** Is every member of `some`, ascending, in `all`, ascending? */
export function within(some: readonly number[], all: readonly number[]): boolean {
	if (some.length > all.length) return false;
	let at = 0;
	for (const member of some) {
		while (at < all.length && all[at]! < member) at++;
		if (all[at] !== member) return false;
	}
	return true;
}

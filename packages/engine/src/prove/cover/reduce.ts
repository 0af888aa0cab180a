/**
 * Smaller covering problems with the same best covers: rows that are covered whenever another is, columns that
 * another does as well, and columns without which some row stays bare.
 *
 * R. Garfinkel, G. Nemhauser, 'Integer Programming', 1972, section 8.3.
 */
import { type CoverProblem, within } from "./problem.js";

export interface Reduced {
	/** Columns that every cover considered here has. */
	readonly forced: readonly number[];
	/** What is left: by row, columns by their numbers in the given problem. */
	readonly rows: readonly (readonly number[])[];
}

/** @param rank of two columns that cover the same the one of lower rank is kept */
export function reduce(problem: CoverProblem, rank: (column: number) => number): Reduced {
	const forced: number[] = [];
	let rows: readonly (readonly number[])[] = problem.rows.filter((row) => row.length > 0);
	for (;;) {
		const before = rows.reduce((sum, row) => sum + row.length, rows.length);
		rows = withoutColumns(withoutRows(rows), rank);
		const must = new Set(rows.flatMap((row) => (row.length === 1 ? row : [])));
		forced.push(...must);
		rows = rows.filter((row) => !row.some((column) => must.has(column)));
		if (rows.reduce((sum, row) => sum + row.length, rows.length) === before) return { forced, rows };
	}
}

/** Drops rows that hold all columns of another one. */
function withoutRows(rows: readonly (readonly number[])[]): readonly (readonly number[])[] {
	const sorted = [...rows].sort((x, y) => x.length - y.length);
	const kept: (readonly number[])[] = [];
	/** Kept rows by their first column. A row that holds another holds its first column. */
	const byFirst = new Map<number, (readonly number[])[]>();
	for (const row of sorted) {
		if (row.some((column) => byFirst.get(column)?.some((other) => within(other, row)))) continue;
		kept.push(row);
		const list = byFirst.get(row[0]!);
		if (list) list.push(row);
		else byFirst.set(row[0]!, [row]);
	}
	return kept;
}

/** Drops columns whose rows another one covers too. */
function withoutColumns(
	rows: readonly (readonly number[])[],
	rank: (column: number) => number,
): readonly (readonly number[])[] {
	const covers = new Map<number, number[]>();
	rows.forEach((row, r) => {
		for (const column of row) {
			const list = covers.get(column);
			if (list) list.push(r);
			else covers.set(column, [r]);
		}
	});
	const sorted = [...covers.keys()].sort(
		(x, y) => covers.get(y)!.length - covers.get(x)!.length || rank(x) - rank(y) || x - y,
	);
	const kept = new Set<number>();
	for (const column of sorted) {
		const own = covers.get(column)!;
		// Of its rows the one with the fewest columns: whatever covers them all is among those.
		const least = own.reduce((best, r) => (rows[r]!.length < rows[best]!.length ? r : best));
		if (!rows[least]!.some((other) => kept.has(other) && within(own, covers.get(other)!))) kept.add(column);
	}
	return rows.map((row) => row.filter((column) => kept.has(column)));
}

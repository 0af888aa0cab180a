/**
 * L D L^T = P (A + dA) P^T for a change of a few entries: only the columns on the paths from the changed entries to
 * the root of the elimination tree differ, and only those are computed again.
 *
 * The structure is that of T. A. Davis, W. W. Hager, "Modifying a sparse Cholesky factorization", SIAM J. Matrix
 * Anal. Appl. 20 (1999) 606-627; we differ by recomputing the columns from A instead of updating them, so nothing is
 * lost when a change all but cuts the network in two, and changing back gives the same bits.
 * O(sum over the paths of the columns each step gathers).
 */
import { eliminate, type FactorResult, type Numeric, report, requireOwn } from "./factor.js";
import { reach } from "./solve-sparse.js";

/**
 * Changes entries of A in place and brings the factor up to date.
 *
 * @param entries places in the pattern's values; `values` their new values
 * @param nodes original indices whose row sum changes, `sums` the new row sums; only for a factor made with row sums
 * @returns as `refactor`. After a failure the next call computes all columns again, so changing back restores the factor
 * @throws RangeError for a place or node outside the pattern, or a sign the subtraction-free path cannot take
 */
export function refactorPart(
	numeric: Numeric,
	entries: ArrayLike<number>,
	values: ArrayLike<number>,
	nodes: ArrayLike<number> = [],
	sums: ArrayLike<number> = [],
): FactorResult {
	requireOwn(numeric);
	const steps = stepsOf(numeric, entries, values, nodes, sums);
	put(numeric, entries, values, nodes, sums);
	return report(numeric, eliminate(numeric, numeric.usable ? steps : null));
}

/** @internal Columns that differ, each after those it depends on. Throws for what cannot be. */
export function stepsOf(
	numeric: Numeric,
	entries: ArrayLike<number>,
	values: ArrayLike<number>,
	nodes: ArrayLike<number>,
	sums: ArrayLike<number>,
): number[] {
	const { n, colPtr, rowIdx } = numeric.symbolic;
	const { rowSums } = numeric;
	if (values.length !== entries.length) {
		throw new RangeError(`${entries.length} entries but ${values.length} values`);
	}
	if (sums.length !== nodes.length) throw new RangeError(`${nodes.length} nodes but ${sums.length} row sums`);
	if (nodes.length > 0 && rowSums === null) throw new RangeError("this factor was made without row sums");
	const ends: number[] = [];
	for (let q = 0; q < entries.length; q++) {
		const s = entries[q];
		if (!(s >= 0 && s < colPtr[n])) throw new RangeError(`entry ${s} is outside 0..${colPtr[n] - 1}`);
		const column = columnOf(colPtr, s);
		const row = rowIdx[s];
		if (!Number.isFinite(values[q]) || (rowSums !== null && row !== column && values[q] > 0)) {
			throw new RangeError(`entry (${row}, ${column}) cannot become ${values[q]}`);
		}
		ends.push(row, column);
	}
	for (let q = 0; q < nodes.length; q++) {
		if (!(sums[q] >= 0 && sums[q] < Number.POSITIVE_INFINITY)) {
			throw new RangeError(`row sum ${nodes[q]} cannot become ${sums[q]}`);
		}
		ends.push(nodes[q]);
	}
	return reach(numeric, ends);
}

/** @internal Puts values of A and its row sums in place. */
export function put(
	{ values: own, rowSums }: Numeric,
	entries: ArrayLike<number>,
	values: ArrayLike<number>,
	nodes: ArrayLike<number>,
	sums: ArrayLike<number>,
): void {
	for (let q = 0; q < entries.length; q++) own[entries[q]] = values[q];
	if (rowSums !== null) for (let q = 0; q < nodes.length; q++) rowSums[nodes[q]] = sums[q];
}

/** The column that holds place s. O(log n). */
function columnOf(colPtr: Int32Array, s: number): number {
	let low = 0;
	let high = colPtr.length - 1;
	while (high - low > 1) {
		const middle = (low + high) >> 1;
		if (colPtr[middle] <= s) low = middle;
		else high = middle;
	}
	return low;
}

/**
 * L D L^T = P (A + dA) P^T for a change of a few entries: only the columns on the paths from the changed entries to
 * the root of the elimination tree differ, and only those are computed again.
 *
 * The structure is that of T. A. Davis, W. W. Hager, "Modifying a sparse Cholesky factorization", SIAM J. Matrix
 * Anal. Appl. 20 (1999) 606-627; we differ by recomputing the columns from A instead of updating them, so nothing is
 * lost when a change all but cuts the network in two, and changing back gives the same bits.
 * O(sum over the paths of the columns each step gathers).
 */
import { eliminate, type FactorResult, type Numeric, report, requireUsable } from "./factor.js";
import { reach } from "./solve-sparse.js";
import type { Symbolic } from "./symbolic.js";

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
	const steps = stepsOf(numeric, entries, values, nodes, sums);
	put(numeric, entries, values, nodes, sums);
	return report(numeric, eliminate(numeric, numeric.usable ? steps : null));
}

/**
 * Does work on the factor as changed by `refactorPart`, and puts the old columns back without computing them again.
 * @param work gets what `refactorPart` returns, and the positions of the columns that differ, each before its parent
 */
export function whileRefactored<T>(
	numeric: Numeric,
	[entries, values]: readonly [places: ArrayLike<number>, values: ArrayLike<number>],
	[nodes, sums]: readonly [nodes: ArrayLike<number>, sums: ArrayLike<number>],
	work: (result: FactorResult, steps: readonly number[]) => T,
): T {
	requireUsable(numeric);
	const steps = stepsOf(numeric, entries, values, nodes, sums);
	const { lower, pivots, carried, rowSums, symbolic } = numeric;
	const { lPtr } = symbolic;
	let size = 0;
	for (const j of steps) size += lPtr[j + 1] - lPtr[j] + 2;
	const kept = new Float64Array(size);
	let top = 0;
	for (const j of steps) {
		kept[top++] = pivots[j];
		kept[top++] = carried[j];
		for (let p = lPtr[j]; p < lPtr[j + 1]; p++) kept[top++] = lower[p];
	}
	const before = Array.from(entries, (s) => numeric.values[s]);
	const sumsBefore = Array.from(nodes, (node) => rowSums![node]);
	put(numeric, entries, values, nodes, sums);
	try {
		return work(report(numeric, eliminate(numeric, steps)), steps);
	} finally {
		put(numeric, entries, before, nodes, sumsBefore);
		top = 0;
		for (const j of steps) {
			pivots[j] = kept[top++];
			carried[j] = kept[top++];
			for (let p = lPtr[j]; p < lPtr[j + 1]; p++) lower[p] = kept[top++];
		}
		numeric.usable = true;
	}
}

/**
 * Entries of x = A^-1 b on a factor changed by {@link whileRefactored}, from y = L^-1 P b of the unchanged one.
 *
 * @param kept y, in elimination order, as `forwardOnly` gives it
 * @param b length n, original numbering; it may differ from that of `kept` at nodes whose position is in `steps`
 * @param steps positions of the columns that differ, as handed to the work
 * @param wanted positions of the entries to find, each after its ancestors in the elimination tree, as `withAncestors`
 *   gives them
 * @param out length n, in elimination order: x at `wanted`, nothing of use elsewhere
 */
export function solveRefactored(
	numeric: Numeric,
	kept: Float64Array,
	b: Float64Array,
	steps: ArrayLike<number>,
	wanted: Int32Array,
	out: Float64Array,
): void {
	const { perm, rowPtr, rowCol, rowPos, lPtr, lRow } = numeric.symbolic;
	const { lower, pivots } = numeric;
	requireUsable(numeric);
	out.set(kept);
	for (let s = 0; s < steps.length; s++) {
		const k = steps[s];
		let y = b[perm[k]];
		for (let q = rowPtr[k], end = rowPtr[k + 1]; q < end; q++) y -= lower[rowPos[q]] * out[rowCol[q]];
		out[k] = y;
	}
	for (let w = 0; w < wanted.length; w++) {
		const j = wanted[w];
		let x = out[j] / pivots[j];
		for (let p = lPtr[j], end = lPtr[j + 1]; p < end; p++) x -= lower[p] * out[lRow[p]];
		out[j] = x;
	}
}

/** Positions of the given nodes and their ancestors in the elimination tree, each after its own ancestors. */
export function withAncestors({ n, inverse, parent }: Symbolic, nodes: Iterable<number>): Int32Array {
	const wanted = new Uint8Array(n);
	for (const node of nodes)
		for (let j = inverse[node]; j !== -1 && wanted[j] === 0; j = parent[j]) wanted[j] = 1;
	return Int32Array.from(wanted.keys())
		.filter((j) => wanted[j] === 1)
		.reverse();
}

/** Columns that differ, each after those it depends on. Throws for what cannot be. */
function stepsOf(
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

function put(
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

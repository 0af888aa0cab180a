/**
 * x = A^-1 b for b with few entries: L y = P b touches only the ancestors of those entries in the elimination tree.
 *
 * J. R. Gilbert, T. Peierls, "Sparse partial pivoting in time proportional to arithmetic operations",
 * SIAM J. Sci. Stat. Comput. 9 (1988) 862-874, with the tree reach of Liu 1986.
 * Forward O(sum of the columns reached); backward O(|L|) for all of x, or the reach of the entries wanted.
 */
import { type Numeric, requireUsable } from "./factor.js";
import { backward } from "./solve.js";

/**
 * Solves A x = b for sparse b; returns all of x.
 *
 * @param indices, values entries of b in original numbering; repeated indices add
 * @param out optional array of length n to write into
 */
export function solveSparse(
	numeric: Numeric,
	indices: ArrayLike<number>,
	values: ArrayLike<number>,
	out?: Float64Array,
): Float64Array {
	const { n, perm } = numeric.symbolic;
	const { work: x } = numeric;
	const answer = out ?? new Float64Array(n);
	if (answer.length !== n) throw new RangeError(`out has ${answer.length} entries, expected ${n}`);
	forward(numeric, indices, values);
	backward(numeric);
	for (let k = 0; k < n; k++) {
		answer[perm[k]] = x[k];
		x[k] = 0;
	}
	return answer;
}

/**
 * Entries `wanted` of x, A x = b for sparse b, without touching the rest of the network.
 *
 * @param indices, values entries of b in original numbering; repeated indices add
 * @param wanted original indices of x to return
 */
export function solveSparseAt(
	numeric: Numeric,
	indices: ArrayLike<number>,
	values: ArrayLike<number>,
	wanted: ArrayLike<number>,
): Float64Array {
	const { inverse, lPtr, lRow } = numeric.symbolic;
	const { lower, pivots, work: x } = numeric;
	const answer = new Float64Array(wanted.length);
	const started = forward(numeric, indices, values);
	const back = reach(numeric, wanted);
	// entries of y outside the reach of `wanted` do not matter: x_j depends on its ancestors only
	for (let r = back.length - 1; r >= 0; r--) {
		const j = back[r];
		let xj = x[j] / pivots[j];
		for (let p = lPtr[j], end = lPtr[j + 1]; p < end; p++) xj -= lower[p] * x[lRow[p]];
		x[j] = xj;
	}
	for (let w = 0; w < wanted.length; w++) answer[w] = x[inverse[wanted[w]]];
	for (const j of back) x[j] = 0;
	for (const j of started) x[j] = 0;
	return answer;
}

/** @internal work <- L^-1 P b; returns the positions touched, descendants first. */
export function forward(numeric: Numeric, indices: ArrayLike<number>, values: ArrayLike<number>): number[] {
	const { inverse, lPtr, lRow } = numeric.symbolic;
	const { lower, work: x } = numeric;
	if (indices.length !== values.length) {
		throw new RangeError(`${indices.length} indices but ${values.length} values`);
	}
	requireUsable(numeric);
	const touched = reach(numeric, indices);
	for (let q = 0; q < indices.length; q++) x[inverse[indices[q]]] += values[q];
	for (const j of touched) {
		const xj = x[j];
		for (let p = lPtr[j], end = lPtr[j + 1]; p < end; p++) x[lRow[p]] -= lower[p] * xj;
	}
	return touched;
}

/** Positions of the given nodes and all their ancestors, every node before its parent. O(size of the answer). */
export function reach(numeric: Numeric, nodes: ArrayLike<number>): number[] {
	const { n, inverse, parent } = numeric.symbolic;
	const { mark, stamp } = numeric;
	if (stamp.now === 0x7fffffff) {
		mark.fill(0);
		stamp.now = 0;
	}
	const now = ++stamp.now;
	const walked: number[] = [];
	const starts: number[] = [];
	for (let q = 0; q < nodes.length; q++) {
		const node = nodes[q];
		if (!(node >= 0 && node < n)) throw new RangeError(`node ${node} is outside 0..${n - 1}`);
		const start = walked.length;
		for (let j = inverse[node]; j !== -1 && mark[j] !== now; j = parent[j]) {
			mark[j] = now;
			walked.push(j);
		}
		if (walked.length > start) starts.push(start);
	}
	if (starts.length < 2) return walked;
	// a later path ends below an earlier one, so it goes first
	const ordered: number[] = [];
	let end = walked.length;
	for (let path = starts.length - 1; path >= 0; path--) {
		for (let at = starts[path]; at < end; at++) ordered.push(walked[at]);
		end = starts[path];
	}
	return ordered;
}

/**
 * Entries of A^-1 between given nodes. L y = e_i touches only the ancestors of node i in the elimination tree, and x_j
 * of L^T x = D^-1 y depends only on the ancestors of j: the rest of the network is never looked at.
 * O(m x the columns of all ancestors), 8 bytes x 64 ancestors beside the answer.
 */
import { type Numeric, requireUsable } from "./factor.js";
import { isZero, take } from "./solve-many.js";
import { reach } from "./solve-sparse.js";

/** Columns worked on together: their part of a row is a few lines of memory. */
const STRIP = 64;

/**
 * A^-1_ij for all i, j of `nodes` (ohms, for a conductance matrix).
 * @param nodes m original numbers, repeated ones allowed
 * @returns m x m by rows
 */
export function inverseAmong(numeric: Numeric, nodes: ArrayLike<number>): Float64Array {
	requireUsable(numeric);
	const { n, inverse, lPtr, lRow } = numeric.symbolic;
	const { lower, pivots } = numeric;
	const m = nodes.length;
	const steps = reach(numeric, nodes);
	const slot = new Int32Array(n);
	steps.forEach((step, at) => {
		slot[step] = at * STRIP;
	});
	const x = new Float64Array(steps.length * STRIP);
	const answer = new Float64Array(m * m);
	for (let first = 0; first < m; first += STRIP) {
		const width = Math.min(STRIP, m - first);
		x.fill(0);
		for (let c = 0; c < width; c++) x[slot[inverse[nodes[first + c]]] + c] = 1;
		for (const j of steps) {
			const from = slot[j];
			if (isZero(x, from, width)) continue;
			for (let p = lPtr[j], end = lPtr[j + 1]; p < end; p++) take(x, slot[lRow[p]], from, lower[p], width);
		}
		for (let s = steps.length - 1; s >= 0; s--) {
			const j = steps[s];
			const at = slot[j];
			const d = pivots[j];
			for (let q = at; q < at + width; q++) x[q] /= d;
			for (let p = lPtr[j], end = lPtr[j + 1]; p < end; p++) take(x, at, slot[lRow[p]], lower[p], width);
		}
		for (let i = 0; i < m; i++) {
			const at = slot[inverse[nodes[i]]];
			for (let c = 0; c < width; c++) answer[i * m + first + c] = x[at + c];
		}
	}
	return answer;
}

/**
 * x = P^T L^-T D^-1 L^-1 P b. O(|L|).
 */
import { type Numeric, requireUsable } from "./factor.js";

/**
 * Solves A x = b, b overwritten by x.
 *
 * @param b length n, original numbering (amperes in, volts out, for a conductance matrix)
 */
export function solve(numeric: Numeric, b: Float64Array): Float64Array {
	const { n, perm, lPtr, lRow } = numeric.symbolic;
	const { lower, work: x } = numeric;
	if (b.length !== n) throw new RangeError(`right-hand side has ${b.length} entries, expected ${n}`);
	requireUsable(numeric);
	for (let k = 0; k < n; k++) x[k] = b[perm[k]];
	for (let j = 0; j < n; j++) {
		const xj = x[j]; // L x = P b
		if (xj !== 0) for (let p = lPtr[j], end = lPtr[j + 1]; p < end; p++) x[lRow[p]] -= lower[p] * xj;
	}
	backward(numeric);
	for (let k = 0; k < n; k++) {
		b[perm[k]] = x[k];
		x[k] = 0;
	}
	return b;
}

/** @internal work <- L^-T D^-1 work. */
export function backward(numeric: Numeric): void {
	const { n, lPtr, lRow } = numeric.symbolic;
	const { lower, pivots, work: x } = numeric;
	for (let j = n - 1; j >= 0; j--) {
		let xj = x[j] / pivots[j];
		for (let p = lPtr[j], end = lPtr[j + 1]; p < end; p++) xj -= lower[p] * x[lRow[p]];
		x[j] = xj;
	}
}

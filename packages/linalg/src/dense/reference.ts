/**
 * A x = b by Gaussian elimination with partial pivoting on a full array: the slow, obvious engine the sparse ones are
 * checked against. O(n^3).
 */
import type { SymmetricPattern } from "../pattern.js";

/** A way to solve symmetric systems; the test suite runs over all of them. */
export interface Engine {
	readonly name: string;
	/**
	 * @param values one per pattern entry; each off-diagonal entry stands for both a_ij and a_ji
	 * @param rowSums conductance of each node to the reference, consistent with `values`
	 */
	prepare(pattern: SymmetricPattern, values: Float64Array, rowSums: Float64Array): Prepared;
}

/** A factored system, or the unknown at which the matrix turned out to be singular or not positive definite. */
export type Prepared =
	| { readonly ok: true; solve(b: Float64Array): Float64Array }
	| { readonly ok: false; readonly node: number };

/** The reference engine. `solve` returns a new array. */
export const denseReference: Engine = {
	name: "dense reference",
	prepare({ n, colPtr, rowIdx }, values) {
		const a = Array.from({ length: n }, () => new Float64Array(n));
		for (let j = 0; j < n; j++) {
			for (let s = colPtr[j]; s < colPtr[j + 1]; s++) {
				a[rowIdx[s]][j] += values[s];
				if (rowIdx[s] !== j) a[j][rowIdx[s]] += values[s];
			}
		}
		const order: number[] = a.map((_, i) => i); // row of A now standing at each place
		for (let k = 0; k < n; k++) {
			let best = k;
			for (let i = k + 1; i < n; i++) if (Math.abs(a[i][k]) > Math.abs(a[best][k])) best = i;
			if (a[best][k] === 0 || !Number.isFinite(a[best][k])) return { ok: false, node: k };
			[a[k], a[best]] = [a[best], a[k]];
			[order[k], order[best]] = [order[best], order[k]];
			for (let i = k + 1; i < n; i++) {
				const f = a[i][k] / a[k][k];
				a[i][k] = f;
				for (let j = k + 1; j < n; j++) a[i][j] -= f * a[k][j];
			}
		}
		return {
			ok: true,
			solve(b) {
				const x = Float64Array.from(order, (i) => b[i]);
				for (let i = 0; i < n; i++) for (let j = 0; j < i; j++) x[i] -= a[i][j] * x[j];
				for (let i = n - 1; i >= 0; i--) {
					for (let j = i + 1; j < n; j++) x[i] -= a[i][j] * x[j];
					x[i] /= a[i][i];
				}
				return x;
			},
		};
	},
};

/**
 * omega = max_i |b - A x|_i / (|A| |x| + |b|)_i, the smallest relative change of entries of A and b that makes x exact.
 *
 * W. Oettli, W. Prager, Numer. Math. 6 (1964) 405-409. Where the denominator is itself rounding noise it becomes
 * (|A||x|)_i + |A_i| max|x|, after M. Arioli, J. W. Demmel, I. S. Duff, "Solving sparse linear systems with sparse
 * backward error", SIAM J. Matrix Anal. Appl. 10 (1989) 165-190. Judging each row by itself matters here: rows of
 * 1e4 S and of 1e-8 S sit in one network, and a norm over all of them would see only the first. O(entries).
 */

/** Every checked solve in this package must bring omega below this. */
export const RESIDUAL_TOLERANCE = 1e-12;

/** Running sums of one residual, each of length n. */
export interface ResidualSums {
	/** b - A x. */
	readonly r: Float64Array;
	/** |A| |x| + |b|. */
	readonly size: Float64Array;
	/** Row sums of |A|. */
	readonly rows: Float64Array;
}

/** Sums for A = 0: r = b, size = |b|. */
export function residualSums(b: Float64Array): ResidualSums {
	return { r: b.slice(), size: b.map(Math.abs), rows: new Float64Array(b.length) };
}

/** omega from finished sums; infinite where x holds NaN. */
export function scaledResidual(sums: ResidualSums, x: Float64Array, b: Float64Array): number {
	const { r, size, rows } = sums;
	const n = x.length;
	let largest = 0;
	for (let i = 0; i < n; i++) largest = Math.max(largest, Math.abs(x[i]));
	const noise = 1000 * n * Number.EPSILON;
	let omega = 0;
	for (let i = 0; i < n; i++) {
		const e = Math.abs(r[i]);
		if (e === 0) continue;
		const reference = rows[i] * largest;
		const denominator =
			size[i] > noise * (reference + Math.abs(b[i])) ? size[i] : size[i] - Math.abs(b[i]) + reference;
		const ratio = e / denominator;
		if (!(ratio <= omega)) omega = Number.isNaN(ratio) ? Number.POSITIVE_INFINITY : ratio;
	}
	return omega;
}

/**
 * P S = L U by partial pivoting, for the k x k systems of low-rank changes; O(k^3).
 *
 * Condition: an estimate of |S^-1|_1 from a few solves, W. W. Hager, "Condition estimates", SIAM J. Sci. Stat.
 * Comput. 5 (1984) 311-316, as in N. J. Higham, ACM Trans. Math. Softw. 14 (1988) 381-396, algorithm 2.1. O(k^2).
 */

/** Factors of a small dense matrix. */
export interface SmallDense {
	readonly ok: true;
	readonly k: number;
	/** Estimate of 1 / (|S|_1 |S^-1|_1), between 0 and 1. */
	readonly rcond: number;
	/** Solves S x = b, b overwritten. */
	solve(b: Float64Array): Float64Array;
	/** Solves S^T x = b, b overwritten. */
	solveTransposed(b: Float64Array): Float64Array;
}

/** The matrix has no pivot in `column`. */
export interface SmallSingular {
	readonly ok: false;
	readonly reason: "singular";
	readonly column: number;
}

/**
 * Factors a dense k x k matrix.
 *
 * @param s row by row, length k^2; kept
 */
export function smallDense(k: number, s: Float64Array): SmallDense | SmallSingular {
	if (s.length !== k * k) throw new RangeError(`matrix has ${s.length} entries, expected ${k} x ${k}`);
	const lu = s.slice();
	const rows = Int32Array.from({ length: k }, (_, i) => i);
	for (let c = 0; c < k; c++) {
		let best = c;
		for (let i = c + 1; i < k; i++) if (Math.abs(lu[i * k + c]) > Math.abs(lu[best * k + c])) best = i;
		const pivot = lu[best * k + c];
		if (!(Math.abs(pivot) > 0 && Math.abs(pivot) < Number.POSITIVE_INFINITY)) {
			return { ok: false, reason: "singular", column: c };
		}
		if (best !== c) {
			for (let j = 0; j < k; j++) {
				const t = lu[c * k + j];
				lu[c * k + j] = lu[best * k + j];
				lu[best * k + j] = t;
			}
			const t = rows[c];
			rows[c] = rows[best];
			rows[best] = t;
		}
		for (let i = c + 1; i < k; i++) {
			lu[i * k + c] /= pivot;
			const l = lu[i * k + c];
			if (l !== 0) for (let j = c + 1; j < k; j++) lu[i * k + j] -= l * lu[c * k + j];
		}
	}
	const x = new Float64Array(k);
	const solve = (b: Float64Array): Float64Array => {
		for (let i = 0; i < k; i++) {
			let v = b[rows[i]];
			for (let j = 0; j < i; j++) v -= lu[i * k + j] * x[j];
			x[i] = v;
		}
		for (let i = k - 1; i >= 0; i--) {
			let v = x[i];
			for (let j = i + 1; j < k; j++) v -= lu[i * k + j] * x[j];
			x[i] = v / lu[i * k + i];
		}
		b.set(x);
		return b;
	};
	const solveTransposed = (b: Float64Array): Float64Array => {
		for (let i = 0; i < k; i++) {
			let v = b[i];
			for (let j = 0; j < i; j++) v -= lu[j * k + i] * x[j];
			x[i] = v / lu[i * k + i];
		}
		for (let i = k - 1; i >= 0; i--) {
			let v = x[i];
			for (let j = i + 1; j < k; j++) v -= lu[j * k + i] * x[j];
			x[i] = v;
		}
		for (let i = 0; i < k; i++) b[rows[i]] = x[i];
		return b;
	};
	const rcond = 1 / (norm1(k, s) * inverseNorm1(k, solve, solveTransposed));
	return { ok: true, k, rcond: Number.isNaN(rcond) ? 0 : Math.min(1, rcond), solve, solveTransposed };
}

/** max over columns of the sum of |s_ij|. */
function norm1(k: number, s: Float64Array): number {
	let largest = 0;
	for (let j = 0; j < k; j++) {
		let sum = 0;
		for (let i = 0; i < k; i++) sum += Math.abs(s[i * k + j]);
		largest = Math.max(largest, sum);
	}
	return largest;
}

/** A lower bound of |S^-1|_1, nearly always within a small factor of it. */
function inverseNorm1(
	k: number,
	solve: (b: Float64Array) => Float64Array,
	solveTransposed: (b: Float64Array) => Float64Array,
): number {
	if (k === 0) return 1;
	let x = new Float64Array(k).fill(1 / k);
	let estimate = 0;
	for (let round = 0; round < 5; round++) {
		const y = solve(x.slice());
		const size = y.reduce((sum, v) => sum + Math.abs(v), 0);
		if (round > 0 && size <= estimate) break;
		estimate = size;
		const z = solveTransposed(y.map((v) => (v < 0 ? -1 : 1)));
		let at = 0;
		for (let i = 1; i < k; i++) if (Math.abs(z[i]) > Math.abs(z[at])) at = i;
		let dot = 0;
		for (let i = 0; i < k; i++) dot += z[i] * x[i];
		if (Math.abs(z[at]) <= dot) break;
		x = new Float64Array(k);
		x[at] = 1;
	}
	return estimate;
}

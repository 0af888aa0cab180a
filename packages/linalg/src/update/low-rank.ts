/**
 * (A + U C U^T)^-1 b = x - Z (I + C U^T Z)^-1 C U^T x,  x = A^-1 b,  Z = A^-1 U,  C = diag(c).
 *
 * J. Sherman, W. J. Morrison, Ann. Math. Statist. 21 (1950) 124-127; M. A. Woodbury, Princeton memorandum 42 (1950);
 * W. W. Hager, "Updating the inverse of a matrix", SIAM Rev. 31 (1989) 221-239. Written with I + C K, K = U^T Z, and
 * not C^-1 + K, so that a term with c = 0 is allowed.
 * O(k^3 + nonzeros of U k) once, O(n k) for each right-hand side.
 *
 * The step that can lose digits is I + C K: opening the only good path of a part leaves the difference of two nearly
 * equal numbers. Its error is magnified by at most
 *   amplification = max_i (|S^-1| (I + |C| |U|^T |Z|))_i,   S = I + C K,
 * the componentwise condition of S to rounding in K (F. L. Bauer, Z. Angew. Math. Mech. 46 (1966) 409-421).
 */
import { type SmallDense, smallDense } from "../dense/small.js";
import type { Numeric } from "../symmetric/factor.js";
import { solve } from "../symmetric/solve.js";
import { type CheckedSolution, refine, residualOf } from "../symmetric/solve-checked.js";
import type { SparseColumns } from "../symmetric/solve-many.js";

/** Updates whose amplification is above this are refused: about ten digits are left at the limit. */
export const AMPLIFICATION_LIMIT = 1e6;

/** A usable low-rank change. */
export interface LowRankUpdate {
	readonly ok: true;
	readonly u: SparseColumns;
	readonly c: Float64Array;
	readonly amplification: number;
	/** Turns x = A^-1 b into (A + U C U^T)^-1 b in place; length n. */
	apply(x: Float64Array): Float64Array;
	/** Entries of the changed solution at `wanted` only, x = A^-1 b given in full. O(k (k + wanted)). */
	applyAt(x: Float64Array, wanted: ArrayLike<number>): Float64Array;
}

/** A change the kept factor cannot carry: the changed matrix is singular, or too many digits would go. Refactor. */
export interface RefusedUpdate {
	readonly ok: false;
	readonly reason: "singular" | "inaccurate";
	readonly amplification: number;
}

/** Columns e_u - e_v, one per pair; a negative end is the reference and drops out. With c = change of conductance. */
export function edgeColumns(from: ArrayLike<number>, to: ArrayLike<number>): SparseColumns {
	const ptr = [0];
	const idx: number[] = [];
	const values: number[] = [];
	for (let t = 0; t < from.length; t++) {
		if (from[t] >= 0) {
			idx.push(from[t]);
			values.push(1);
		}
		if (to[t] >= 0) {
			idx.push(to[t]);
			values.push(-1);
		}
		ptr.push(idx.length);
	}
	return { ptr: Int32Array.from(ptr), idx: Int32Array.from(idx), values: Float64Array.from(values) };
}

/**
 * Prepares A + U diag(c) U^T on a kept factor of A.
 *
 * @param column column(t) is A^-1 u_t, length n, original numbering; kept by the update, so it must not change
 * @param u the k columns of U
 * @param c length k; siemens, for changes of conductance
 */
export function lowRankUpdate(
	column: (t: number) => Float64Array,
	u: SparseColumns,
	c: Float64Array,
): LowRankUpdate | RefusedUpdate {
	const k = c.length;
	if (u.ptr.length !== k + 1) throw new RangeError(`U has ${u.ptr.length - 1} columns but c ${k} entries`);
	const z = Array.from({ length: k }, (_, t) => column(t));
	const s = new Float64Array(k * k); // I + C K, each row brought to size one: c spans many orders of magnitude
	const bound = new Float64Array(k * k); // I + |C| |U|^T |Z|, rows scaled alike
	const scale = new Float64Array(k);
	for (let i = 0; i < k; i++) {
		let largest = 0;
		for (let j = 0; j < k; j++) {
			let sum = 0;
			let size = 0;
			for (let p = u.ptr[i]; p < u.ptr[i + 1]; p++) {
				const term = u.values[p] * z[j][u.idx[p]];
				sum += term;
				size += Math.abs(term);
			}
			const one = i === j ? 1 : 0;
			s[i * k + j] = one + c[i] * sum;
			bound[i * k + j] = one + Math.abs(c[i]) * size;
			largest = Math.max(largest, bound[i * k + j]);
		}
		scale[i] = 1 / largest;
		for (let j = 0; j < k; j++) {
			s[i * k + j] *= scale[i];
			bound[i * k + j] *= scale[i];
		}
	}
	const small = smallDense(k, s);
	if (!small.ok) return { ok: false, reason: "singular", amplification: Number.POSITIVE_INFINITY };
	const amplification = amplificationOf(k, small, bound, c);
	if (!(amplification <= AMPLIFICATION_LIMIT)) return { ok: false, reason: "inaccurate", amplification };

	/** (I + C K)^-1 C U^T x. */
	const weights = (x: Float64Array): Float64Array => {
		const w = new Float64Array(k);
		for (let t = 0; t < k; t++) {
			let sum = 0;
			for (let p = u.ptr[t]; p < u.ptr[t + 1]; p++) sum += u.values[p] * x[u.idx[p]];
			w[t] = c[t] * sum * scale[t];
		}
		return small.solve(w);
	};
	return {
		ok: true,
		u,
		c,
		amplification,
		apply(x) {
			const w = weights(x);
			for (let t = 0; t < k; t++) {
				const wt = w[t];
				const zt = z[t];
				if (wt !== 0) for (let i = 0; i < x.length; i++) x[i] -= wt * zt[i];
			}
			return x;
		},
		applyAt(x, wanted) {
			const w = weights(x);
			return Float64Array.from(wanted, (i) => {
				let v = x[i];
				for (let t = 0; t < k; t++) v -= w[t] * z[t][i];
				return v;
			});
		},
	};
}

/**
 * max_i sum_j (|S^-1| B)_ij d_j / d_i with d = sqrt(|c|): in that scaling a symmetric change is symmetric again, so a
 * short and a leak in one change are judged alike. O(k^3).
 */
function amplificationOf(k: number, small: SmallDense, bound: Float64Array, c: Float64Array): number {
	const absInverse = new Float64Array(k * k);
	for (let j = 0; j < k; j++) {
		const e = new Float64Array(k);
		e[j] = 1;
		small.solve(e);
		for (let i = 0; i < k; i++) absInverse[i * k + j] = Math.abs(e[i]);
	}
	let worst = 1;
	for (let i = 0; i < k; i++) {
		if (c[i] === 0) continue;
		let sum = 0;
		for (let m = 0; m < k; m++) {
			for (let j = 0; j < k; j++) {
				sum += absInverse[i * k + m] * bound[m * k + j] * Math.sqrt(Math.abs(c[j] / c[i]));
			}
		}
		worst = Number.isNaN(sum) ? Number.POSITIVE_INFINITY : Math.max(worst, sum);
	}
	return worst;
}

/**
 * Solves (A + U C U^T) x = b on the kept factor of A and verifies the answer against the changed matrix.
 *
 * @returns `ok: false` when the scaled residual of the changed system stays above RESIDUAL_TOLERANCE: refactor
 */
export function solveUpdated(
	numeric: Numeric,
	update: LowRankUpdate,
	b: Float64Array,
	maxSteps = 3,
): CheckedSolution {
	const { u, c } = update;
	return refine(
		b,
		(r) => update.apply(solve(numeric, r)),
		(x) => {
			const sums = residualOf(numeric, x, b);
			for (let t = 0; t < c.length; t++) {
				let drop = 0;
				let size = 0;
				let width = 0;
				for (let p = u.ptr[t]; p < u.ptr[t + 1]; p++) {
					drop += u.values[p] * x[u.idx[p]];
					size += Math.abs(u.values[p] * x[u.idx[p]]);
					width += Math.abs(u.values[p]);
				}
				for (let p = u.ptr[t]; p < u.ptr[t + 1]; p++) {
					const i = u.idx[p];
					sums.r[i] -= c[t] * u.values[p] * drop;
					sums.size[i] += Math.abs(c[t] * u.values[p]) * size;
					sums.rows[i] += Math.abs(c[t] * u.values[p]) * width;
				}
			}
			return sums;
		},
		maxSteps,
	);
}

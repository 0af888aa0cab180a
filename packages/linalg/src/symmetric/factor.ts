/**
 * L D L^T = P A P^T, left-looking by columns:
 *   u = a_{k:n,k} - sum_j l_{k:n,j} d_j l_kj,   d_k = u_k,   l_{:,k} = u / d_k.
 *
 * With row sums given, the diagonal is never formed by subtraction:
 *   s_k <- s_k - sum_j l_kj s_j,   d_k = s_k + sum_{i>k} |u_i|,
 * the elimination of W. K. Grassmann, M. I. Taksar, D. P. Heyman, "Regenerative analysis and steady state
 * distributions for Markov chains", Oper. Res. 33 (1985) 1107-1116, applied to diagonally dominant M-matrices
 * (C. A. O'Cinneide, "Relative-error bounds for the LU decomposition via the GTH algorithm", Numer. Math. 73 (1996)
 * 507-519). For conductances that is star-mesh reduction: every term is positive, so every entry of L, D and A^-1 is
 * right to about n units of rounding however ill-conditioned A is (1e-8 S beside 1e4 S loses nothing).
 *
 * O(flops + |L|), no memory taken.
 */
import type { Symbolic } from "./symbolic.js";

/** A factor and the matrix it came from. Belongs to one caller at a time: solves use its workspace. */
export interface Numeric {
	readonly symbolic: Symbolic;
	/** Values of A, in the order of the pattern, then one zero; a copy, replaced by `refactor`. */
	readonly values: Float64Array;
	/** Row sums of A (conductance from each node to the reference), or null when the plain path was taken. */
	readonly rowSums: Float64Array | null;
	/** Strict lower triangle of L, places as in symbolic.lRow, then the n pivots. `lower` and `pivots` are views of it. */
	readonly store: Float64Array;
	readonly lower: Float64Array;
	readonly pivots: Float64Array;
	/** Row sums carried through the elimination. */
	readonly carried: Float64Array;
	/** Scratch of length n, all zeros between calls. */
	readonly work: Float64Array;
	/** Scratch stamps of length n; `stamp.now` is the last used. */
	readonly mark: Int32Array;
	readonly stamp: { now: number };
	/**
	 * Smallest d_k / a_kk and the original node where it fell: -log10 of it digits are lost to cancellation.
	 * Ratio 1 and node -1 on the subtraction-free path, which loses none.
	 */
	smallest: { node: number; pivot: number; ratio: number };
}

/** Why a matrix has no L D L^T with positive D. An answer, not an error: a floating part of a network looks like this. */
export interface NotPositiveDefinite {
	readonly ok: false;
	readonly reason: "not positive definite";
	/** Original index of the unknown whose pivot failed. */
	readonly node: number;
	/** Position in the elimination order. */
	readonly step: number;
	readonly pivot: number;
}

export type FactorResult = { readonly ok: true; readonly numeric: Numeric } | NotPositiveDefinite;

/**
 * Factors a symmetric positive definite matrix.
 *
 * @param values one per pattern entry (siemens, for a conductance matrix)
 * @param rowSums optional, length n, >= 0: takes the subtraction-free path. Off-diagonal values must then be <= 0, and
 *   the diagonal of A is rowSums[i] + sum |a_ij|; diagonal entries of `values` are ignored.
 * @throws RangeError for wrong lengths, a value that is not finite, or signs the subtraction-free path cannot take
 */
export function factor(symbolic: Symbolic, values: Float64Array, rowSums?: Float64Array): FactorResult {
	const n = symbolic.n;
	const size = symbolic.lPtr[n];
	const store = new Float64Array(size + n);
	const numeric: Numeric = {
		symbolic,
		values: new Float64Array(symbolic.colPtr[n] + 1),
		rowSums: rowSums === undefined ? null : new Float64Array(n),
		store,
		lower: store.subarray(0, size),
		pivots: store.subarray(size),
		carried: new Float64Array(n),
		work: new Float64Array(n),
		mark: new Int32Array(n),
		stamp: { now: 0 },
		smallest: { node: -1, pivot: Number.POSITIVE_INFINITY, ratio: 1 },
	};
	return refactor(numeric, values, rowSums);
}

/** As `factor`, on the same pattern, reusing all memory of `numeric`. After a failure the factor is unusable until the next success. */
export function refactor(numeric: Numeric, values: Float64Array, rowSums?: Float64Array): FactorResult {
	const { symbolic } = numeric;
	const { n } = symbolic;
	const entries = symbolic.colPtr[n];
	if (values.length !== entries) throw new RangeError(`expected ${entries} values, got ${values.length}`);
	if ((rowSums === undefined) !== (numeric.rowSums === null)) {
		throw new RangeError("a factor made with row sums is refactored with row sums, and one without, without");
	}
	numeric.values.set(values);
	if (rowSums !== undefined && numeric.rowSums !== null) {
		if (rowSums.length !== n) throw new RangeError(`expected ${n} row sums, got ${rowSums.length}`);
		numeric.rowSums.set(rowSums);
		checkSigns(symbolic, values, rowSums);
	}
	return report(numeric, eliminate(numeric, null));
}

/** @internal The result of an elimination that stopped at `failed` (-1: it did not). */
export function report(numeric: Numeric, failed: number): FactorResult {
	if (failed === -1) return { ok: true, numeric };
	const { symbolic, pivots, values, work } = numeric;
	work.fill(0);
	checkFinite(values);
	return {
		ok: false,
		reason: "not positive definite",
		node: symbolic.perm[failed],
		step: failed,
		pivot: pivots[failed],
	};
}

/**
 * Computes columns `steps` of L and D (all of them for null), in that order; the columns they depend on must stand.
 *
 * @internal
 * @returns the failing step, or -1
 */
export function eliminate(numeric: Numeric, steps: ArrayLike<number> | null): number {
	const { lPtr, lRow, rowPtr, rowCol, rowPos, source, perm, n } = numeric.symbolic;
	const { lower, pivots, carried, work, values, rowSums } = numeric;
	const size = lPtr[n];
	const count = steps === null ? n : steps.length;
	let ratio = Number.POSITIVE_INFINITY;
	let where = -1;
	for (let t = 0; t < count; t++) {
		const k = steps === null ? t : steps[t];
		const begin = lPtr[k];
		const end = lPtr[k + 1];
		const full = values[source[size + k]];
		let d = full;
		let s = rowSums === null ? 0 : rowSums[perm[k]];
		for (let q = rowPtr[k], last = rowPtr[k + 1]; q < last; q++) {
			const j = rowCol[q];
			let p = rowPos[q];
			const l = lower[p++];
			const f = l * pivots[j];
			d -= l * f;
			s -= l * carried[j];
			for (const stop = lPtr[j + 1]; p < stop; p++) work[lRow[p]] -= lower[p] * f;
		}
		if (rowSums !== null) {
			d = s;
			carried[k] = s;
		}
		for (let p = begin; p < end; p++) {
			const i = lRow[p];
			const u = values[source[p]] + work[i];
			work[i] = 0;
			lower[p] = u;
			if (rowSums !== null) d -= u;
		}
		pivots[k] = d;
		if (!(d > 0 && d < Number.POSITIVE_INFINITY)) return k;
		for (let p = begin; p < end; p++) lower[p] /= d;
		if (rowSums === null && d < ratio * full) {
			ratio = d / full;
			where = k;
		}
	}
	if (steps === null && rowSums === null && where !== -1) {
		numeric.smallest = { node: perm[where], pivot: pivots[where], ratio };
	}
	return -1;
}

function checkFinite(values: Float64Array): void {
	for (let s = 0; s < values.length; s++) {
		if (!Number.isFinite(values[s])) throw new RangeError(`value ${s} is ${values[s]}, not a finite number`);
	}
}

function checkSigns(symbolic: Symbolic, values: Float64Array, rowSums: Float64Array): void {
	const { n, colPtr, rowIdx } = symbolic;
	for (let j = 0; j < n; j++) {
		if (!(rowSums[j] >= 0 && rowSums[j] < Number.POSITIVE_INFINITY)) {
			throw new RangeError(`row sum ${j} is ${rowSums[j]}; the subtraction-free path needs finite sums >= 0`);
		}
		for (let s = colPtr[j]; s < colPtr[j + 1]; s++) {
			if (rowIdx[s] !== j && !(values[s] <= 0 && values[s] > Number.NEGATIVE_INFINITY)) {
				throw new RangeError(
					`entry (${rowIdx[s]}, ${j}) is ${values[s]}; the subtraction-free path needs finite values <= 0`,
				);
			}
		}
	}
}

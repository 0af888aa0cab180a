/**
 * L D L^T = P A P^T by columns:
 *   u = a_{k:n,k} - sum_j l_{k:n,j} d_j l_kj,   d_k = u_k,   l_{:,k} = u / d_k.
 *
 * Two ways round the same products in the same order, so to the same bits. `eliminateAll` sends each column's products
 * to where they belong as soon as it is finished (a list of places made once per pattern): no search, no gathering,
 * twice as fast where columns are short. `eliminate` gathers for one column at a time, and so can redo some of them.
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
	/** Whether L and D belong to `values`: false after a failed factorisation, and solves then throw. */
	usable: boolean;
	/** Its memory was handed back: it can never be used again. */
	released: boolean;
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
	const { n, colPtr, lPtr } = symbolic;
	const size = lPtr[n];
	const entries = colPtr[n];
	// one allocation for everything, cut into views
	const sums = rowSums === undefined ? 0 : n;
	const length = size + n + entries + 1 + sums + 2 * n + ((n + 1) >> 1);
	const all = takeSpare(symbolic, length) ?? new Float64Array(length);
	let top = 0;
	const cut = (length: number) => {
		top += length;
		return all.subarray(top - length, top);
	};
	const store = cut(size + n);
	const numeric: Numeric = {
		symbolic,
		store,
		lower: all.subarray(0, size),
		pivots: all.subarray(size, size + n),
		values: cut(entries + 1),
		rowSums: rowSums === undefined ? null : cut(n),
		carried: cut(n),
		work: cut(n),
		mark: new Int32Array(all.buffer, 8 * top, n),
		stamp: { now: 0 },
		usable: false,
		released: false,
	};
	return refactor(numeric, values, rowSums);
}

/** Memory of a factor of each pattern that was handed back. */
const spares = new WeakMap<Symbolic, Float64Array>();

/**
 * Hands back the memory of a factor that nobody needs any more: the next one of the pattern takes it. Memory fresh from
 * the system costs more than the factor, and a collector gives it back late. Whatever uses this one after throws.
 */
export function release(numeric: Numeric): void {
	if (numeric.released) return;
	numeric.usable = false;
	numeric.released = true;
	spares.set(numeric.symbolic, new Float64Array(numeric.store.buffer));
}

function takeSpare(symbolic: Symbolic, length: number): Float64Array | undefined {
	const spare = spares.get(symbolic);
	if (spare?.length !== length) return undefined;
	spares.delete(symbolic);
	return spare.fill(0);
}

/** As `factor`, on the same pattern, reusing all memory of `numeric`. After a failure the factor is unusable until the next success. */
export function refactor(numeric: Numeric, values: Float64Array, rowSums?: Float64Array): FactorResult {
	const { symbolic } = numeric;
	const { n } = symbolic;
	const entries = symbolic.colPtr[n];
	requireOwn(numeric);
	if (values.length !== entries) throw new RangeError(`expected ${entries} values, got ${values.length}`);
	if ((rowSums === undefined) !== (numeric.rowSums === null)) {
		throw new RangeError("a factor made with row sums is refactored with row sums, and one without, without");
	}
	numeric.values.set(values);
	if (rowSums !== undefined && numeric.rowSums !== null) {
		if (rowSums.length !== n) throw new RangeError(`expected ${n} row sums, got ${rowSums.length}`);
		numeric.rowSums.set(rowSums);
		checkSigns(numeric, rowSums);
	}
	const { updates } = symbolic;
	if (updates === null) return report(numeric, eliminate(numeric, null));
	return report(
		numeric,
		numeric.rowSums === null
			? eliminateAll(numeric, updates)
			: eliminateAllBySums(numeric, updates, numeric.rowSums),
	);
}

/** @internal Throws when the memory was handed back. */
export function requireOwn(numeric: Numeric): void {
	if (numeric.released) throw new RangeError("this factor was released");
}

/** @internal Throws when the last factorisation of these values failed. */
export function requireUsable(numeric: Numeric): void {
	requireOwn(numeric);
	if (!numeric.usable) throw new RangeError("the last factorisation failed; refactor before solving");
}

/** @internal The result of an elimination that stopped at `failed` (-1: it did not). */
export function report(numeric: Numeric, failed: number): FactorResult {
	numeric.usable = failed === -1;
	if (numeric.usable) return { ok: true, numeric };
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
	const { rowPtr, n } = numeric.symbolic;
	const count = steps === null ? n : steps.length;
	for (let t = 0; t < count; t++) {
		const k = steps === null ? t : steps[t];
		startColumn(numeric, k);
		gather(numeric, k, rowPtr[k], rowPtr[k + 1]);
		if (!finishColumn(numeric, k)) return k;
	}
	return -1;
}

/** @internal Column k of A: below the diagonal into `work`, the diagonal into the pivots, its row sum into the carried ones. */
export function startColumn(numeric: Numeric, k: number): void {
	const { lPtr, lRow, source, perm, n } = numeric.symbolic;
	const { pivots, carried, work, values, rowSums } = numeric;
	for (let p = lPtr[k], end = lPtr[k + 1]; p < end; p++) work[lRow[p]] = values[source[p]];
	pivots[k] = values[source[lPtr[n] + k]];
	carried[k] = rowSums === null ? 0 : rowSums[perm[k]];
}

/** @internal Takes from column k what other columns send there: those of entries `from` to `to` of the rows of L. */
export function gather(numeric: Numeric, k: number, from: number, to: number): void {
	const { lPtr, lRow, rowCol, rowPos } = numeric.symbolic;
	const { lower, pivots, carried, work } = numeric;
	let d = pivots[k];
	let s = carried[k];
	for (let q = from; q < to; q++) {
		const j = rowCol[q];
		let p = rowPos[q];
		const l = lower[p++];
		const f = l * pivots[j];
		d -= l * f;
		s -= l * carried[j];
		for (const stop = lPtr[j + 1]; p < stop; p++) work[lRow[p]] -= lower[p] * f;
	}
	pivots[k] = d;
	carried[k] = s;
}

/** @internal Pivot and entries of a gathered column; false where the pivot is not one. */
export function finishColumn(numeric: Numeric, k: number): boolean {
	const { lPtr, lRow } = numeric.symbolic;
	const { lower, pivots, carried, work, rowSums } = numeric;
	const begin = lPtr[k];
	const end = lPtr[k + 1];
	let d = pivots[k];
	if (rowSums !== null) {
		d = carried[k];
		for (let p = begin; p < end; p++) d -= work[lRow[p]];
		pivots[k] = d;
	}
	if (!(d > 0 && d < Number.POSITIVE_INFINITY)) return false;
	for (let p = begin; p < end; p++) {
		lower[p] = work[lRow[p]] / d;
		work[lRow[p]] = 0;
	}
	return true;
}

/** Computes all of L and D with the list of update places; returns the failing step, or -1. */
function eliminateAll(numeric: Numeric, updates: Int32Array): number {
	const { lPtr, lRow, source, n } = numeric.symbolic;
	const { store, values } = numeric;
	const size = lPtr[n];
	for (let p = 0; p < store.length; p++) store[p] = values[source[p]];
	let t = 0;
	for (let k = 0, begin = 0; k < n; k++) {
		const end = lPtr[k + 1];
		const d = store[size + k];
		if (!(d > 0 && d < Number.POSITIVE_INFINITY)) return k;
		// from the last entry up: those below are divided by d already when their products are taken
		for (let p = end - 1; p >= begin; p--) {
			const l = store[p] / d;
			store[p] = l;
			const f = l * d;
			store[size + lRow[p]] -= l * f;
			for (let q = p + 1; q < end; q++) store[updates[t++]] -= store[q] * f;
		}
		begin = end;
	}
	return -1;
}

/** As eliminateAll, with the pivots from row sums. Apart, so that each loop compiles for one case. */
function eliminateAllBySums(numeric: Numeric, updates: Int32Array, rowSums: Float64Array): number {
	const { lPtr, lRow, source, perm, n } = numeric.symbolic;
	const { store, carried, values } = numeric;
	const size = lPtr[n];
	for (let p = 0; p < size; p++) store[p] = values[source[p]];
	for (let k = 0; k < n; k++) carried[k] = rowSums[perm[k]];
	let t = 0;
	for (let k = 0, begin = 0; k < n; k++) {
		const end = lPtr[k + 1];
		const s = carried[k];
		let d = s;
		for (let p = begin; p < end; p++) d -= store[p];
		store[size + k] = d;
		if (!(d > 0 && d < Number.POSITIVE_INFINITY)) return k;
		for (let p = end - 1; p >= begin; p--) {
			const l = store[p] / d;
			store[p] = l;
			const f = l * d;
			carried[lRow[p]] -= l * s;
			for (let q = p + 1; q < end; q++) store[updates[t++]] -= store[q] * f;
		}
		begin = end;
	}
	return -1;
}

/**
 * The smallest d_k / a_kk of a factor made without row sums, and the original node where it fell: -log10 of the ratio
 * is the number of digits lost to cancellation. With row sums nothing cancels, and there is nothing to ask. O(n).
 */
export function smallestPivot(numeric: Numeric): { node: number; pivot: number; ratio: number } {
	const { symbolic, pivots, values } = numeric;
	const { n, lPtr, source, perm } = symbolic;
	let smallest = { node: -1, pivot: Number.POSITIVE_INFINITY, ratio: Number.POSITIVE_INFINITY };
	for (let k = 0; k < n; k++) {
		const ratio = pivots[k] / values[source[lPtr[n] + k]];
		if (ratio < smallest.ratio) smallest = { node: perm[k], pivot: pivots[k], ratio };
	}
	return smallest;
}

function checkFinite(values: Float64Array): void {
	for (let s = 0; s < values.length; s++) {
		if (!Number.isFinite(values[s])) throw new RangeError(`value ${s} is ${values[s]}, not a finite number`);
	}
}

function checkSigns(numeric: Numeric, rowSums: Float64Array): void {
	const { symbolic, values, lower } = numeric;
	const { source } = symbolic;
	for (let i = 0; i < rowSums.length; i++) {
		if (!(rowSums[i] >= 0 && rowSums[i] < Number.POSITIVE_INFINITY)) {
			throw new RangeError(`row sum ${i} is ${rowSums[i]}; the subtraction-free path needs finite sums >= 0`);
		}
	}
	for (let p = 0; p < lower.length; p++) {
		const v = values[source[p]];
		if (!(v <= 0 && v > Number.NEGATIVE_INFINITY)) refuseSign(numeric, source[p]);
	}
}

function refuseSign({ symbolic, values }: Numeric, s: number): never {
	const column = symbolic.colPtr.findLastIndex((start) => start <= s);
	throw new RangeError(
		`entry (${symbolic.rowIdx[s]}, ${column}) is ${values[s]}; the subtraction-free path needs finite values <= 0`,
	);
}

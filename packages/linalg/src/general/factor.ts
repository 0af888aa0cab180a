/**
 * P R A Q = L U, column by column:
 *   x = L^-1 P R a_q  on the reach of a_q,  u_{1:k-1,k} = x above,  pivot from x below,  l_{:,k} = x / pivot.
 *
 * J. R. Gilbert, T. Peierls, "Sparse partial pivoting in time proportional to arithmetic operations", SIAM J. Sci.
 * Stat. Comput. 9 (1988) 862-874. Threshold pivoting: the diagonal stays pivot while it is at least `threshold` times
 * the largest candidate. R scales every row to a largest entry of one. O(flops).
 */
import type { GeneralSymbolic } from "./symbolic.js";

/** Factors of a general matrix. Belongs to one caller at a time: solves use its workspace. */
export interface GeneralNumeric {
	readonly symbolic: GeneralSymbolic;
	/** Values of A, a copy. */
	readonly values: Float64Array;
	/** Row scale R, original numbering. */
	readonly scale: Float64Array;
	/** pivotRow[k] is the original row chosen k-th. */
	readonly pivotRow: Int32Array;
	/** L without its unit diagonal, by columns, rows in pivot order. */
	readonly lPtr: Int32Array;
	readonly lRow: Int32Array;
	readonly lower: Float64Array;
	/** U without its diagonal, by columns, rows in pivot order; pivots apart. */
	readonly uPtr: Int32Array;
	readonly uRow: Int32Array;
	readonly upper: Float64Array;
	readonly pivots: Float64Array;
	/** Scratch of length n, zeros between calls. */
	readonly work: Float64Array;
	/** Largest |u_ij| of the row-scaled matrix, whose own entries are at most one: element growth. */
	readonly growth: number;
}

/** No pivot was left in a column: the matrix is singular. */
export interface Singular {
	readonly ok: false;
	readonly reason: "singular";
	/** Original column without a pivot. */
	readonly column: number;
	/** Columns factored before it: the rank is at least this. */
	readonly step: number;
}

export type GeneralResult = { readonly ok: true; readonly numeric: GeneralNumeric } | Singular;

/**
 * Factors a general square matrix.
 *
 * @param values one per pattern entry
 * @param threshold in (0, 1]: 1 is full partial pivoting, less keeps more pivots on the diagonal
 * @throws RangeError for wrong lengths, a value that is not finite, or a threshold outside (0, 1]
 */
export function factorGeneral(
	symbolic: GeneralSymbolic,
	values: Float64Array,
	threshold = 0.1,
): GeneralResult {
	const { n, colPtr, rowIdx, order } = symbolic;
	const entries = colPtr[n];
	if (values.length !== entries) throw new RangeError(`expected ${entries} values, got ${values.length}`);
	if (!(threshold > 0 && threshold <= 1))
		throw new RangeError(`threshold must be in (0, 1], got ${threshold}`);
	const scale = rowScale(n, rowIdx, values);
	const pivotRow = new Int32Array(n);
	const pivotStep = new Int32Array(n).fill(-1); // inverse of pivotRow, -1 while a row is not pivotal
	const pivots = new Float64Array(n);
	const lPtr = new Int32Array(n + 1);
	const uPtr = new Int32Array(n + 1);
	let lRow = new Int32Array(2 * entries + n);
	let lower = new Float64Array(lRow.length);
	let uRow = new Int32Array(2 * entries + n);
	let upper = new Float64Array(uRow.length);
	const x = new Float64Array(n);
	const mark = new Int32Array(n).fill(-1);
	const stack = new Int32Array(n); // rows on the current path
	const cursor = new Int32Array(n); // next place in the column of each
	const found = new Int32Array(n); // topological order, filled from the end
	let lTop = 0;
	let uTop = 0;
	let growth = 0;
	for (let k = 0; k < n; k++) {
		const q = order[k];
		lPtr[k] = lTop;
		uPtr[k] = uTop;
		if (lTop + n > lRow.length) {
			lRow = grow(lRow, lTop + n);
			lower = growFloat(lower, lRow.length);
		}
		if (uTop + n > uRow.length) {
			uRow = grow(uRow, uTop + n);
			upper = growFloat(upper, uRow.length);
		}

		// rows reached from column q through the columns of L already made, depth first
		let first = n;
		for (let s = colPtr[q]; s < colPtr[q + 1]; s++) {
			const root = rowIdx[s];
			if (mark[root] === k) continue;
			let depth = 0;
			stack[0] = root;
			mark[root] = k;
			cursor[0] = pivotStep[root] < 0 ? 0 : lPtr[pivotStep[root]];
			while (depth >= 0) {
				const step = pivotStep[stack[depth]];
				let down = -1;
				if (step >= 0) {
					let p = cursor[depth];
					for (const end = lPtr[step + 1]; p < end; p++) {
						if (mark[lRow[p]] !== k) {
							down = lRow[p];
							break;
						}
					}
					cursor[depth] = p + 1;
				}
				if (down === -1) {
					found[--first] = stack[depth--];
					continue;
				}
				mark[down] = k;
				stack[++depth] = down;
				cursor[depth] = pivotStep[down] < 0 ? 0 : lPtr[pivotStep[down]];
			}
		}

		for (let s = colPtr[q]; s < colPtr[q + 1]; s++) x[rowIdx[s]] += values[s] * scale[rowIdx[s]];
		let largest = 0;
		let pivotAt = -1;
		for (let r = first; r < n; r++) {
			const i = found[r];
			const step = pivotStep[i];
			const xi = x[i];
			if (step < 0) {
				const size = Math.abs(xi);
				if (size > largest) {
					largest = size;
					pivotAt = i;
				}
				continue;
			}
			uRow[uTop] = step;
			upper[uTop++] = xi;
			if (Math.abs(xi) > growth) growth = Math.abs(xi);
			if (xi !== 0) for (let p = lPtr[step], end = lPtr[step + 1]; p < end; p++) x[lRow[p]] -= lower[p] * xi;
		}
		if (!(largest > 0 && largest < Number.POSITIVE_INFINITY)) {
			return { ok: false, reason: "singular", column: q, step: k };
		}
		if (pivotStep[q] < 0 && Math.abs(x[q]) >= threshold * largest && mark[q] === k) pivotAt = q;
		const pivot = x[pivotAt];
		if (Math.abs(pivot) > growth) growth = Math.abs(pivot);
		pivots[k] = pivot;
		pivotRow[k] = pivotAt;
		pivotStep[pivotAt] = k;
		for (let r = first; r < n; r++) {
			const i = found[r];
			if (pivotStep[i] < 0 && x[i] !== 0) {
				lRow[lTop] = i;
				lower[lTop++] = x[i] / pivot;
			}
			x[i] = 0;
		}
		lPtr[k + 1] = lTop;
	}
	uPtr[n] = uTop;
	for (let p = 0; p < lTop; p++) lRow[p] = pivotStep[lRow[p]];
	const numeric: GeneralNumeric = {
		symbolic,
		values: values.slice(),
		scale,
		pivotRow,
		lPtr,
		lRow: lRow.slice(0, lTop),
		lower: lower.slice(0, lTop),
		uPtr,
		uRow: uRow.slice(0, uTop),
		upper: upper.slice(0, uTop),
		pivots,
		work: x,
		growth,
	};
	return { ok: true, numeric };
}

/** 1 / max |a_ij| of each row; 1 for an empty row, which ends as singular. */
function rowScale(n: number, rowIdx: Int32Array, values: Float64Array): Float64Array {
	const scale = new Float64Array(n);
	for (let s = 0; s < values.length; s++) {
		const size = Math.abs(values[s]);
		if (!Number.isFinite(size)) throw new RangeError(`value ${s} is ${values[s]}, not a finite number`);
		if (size > scale[rowIdx[s]]) scale[rowIdx[s]] = size;
	}
	return scale.map((v) => (v > 0 ? 1 / v : 1));
}

function grow(array: Int32Array<ArrayBuffer>, need: number): Int32Array<ArrayBuffer> {
	const bigger = new Int32Array(Math.max(need, 2 * array.length));
	bigger.set(array);
	return bigger;
}

function growFloat(array: Float64Array<ArrayBuffer>, length: number): Float64Array<ArrayBuffer> {
	const bigger = new Float64Array(length);
	bigger.set(array);
	return bigger;
}

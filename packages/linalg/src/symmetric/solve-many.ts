/**
 * X = A^-1 B for many right-hand sides together, so that each entry of L is read once for several products.
 * O(|L| columns); forward only along the tree paths of what B holds.
 */
import { type Numeric, requireUsable } from "./factor.js";
import { forward } from "./solve-sparse.js";

/** Columns of the inverse taken together. */
const WIDTH = 4;

/** n x k matrix by sparse columns: column t has values[ptr[t] .. ptr[t+1]) at rows idx[..]. */
export interface SparseColumns {
	readonly ptr: Int32Array;
	readonly idx: Int32Array;
	readonly values: Float64Array;
}

/**
 * Solves A X = B for sparse columns of B.
 *
 * @param out n x k, row by row in elimination order, so that rows that are used together lie together: what right-hand
 *   side r has at position j goes to out[j k + r]. Overwritten, whatever it holds
 */
export function solveMany(numeric: Numeric, columns: SparseColumns, out?: Float64Array): Float64Array {
	const { n } = numeric.symbolic;
	const count = columns.ptr.length - 1;
	const x = out ?? new Float64Array(n * count);
	if (x.length !== n * count) throw new RangeError(`out has ${x.length} entries, expected ${n} x ${count}`);
	requireUsable(numeric);
	backwardMany(numeric, forwardMany(numeric, columns), x, count);
	return x;
}

/** Entries of L^-1 P B by position: those of position j at ptr[j] .. ptr[j + 1], right-hand sides ascending. */
function forwardMany(numeric: Numeric, { ptr, idx, values }: SparseColumns): SparseColumns {
	const { work } = numeric;
	const { n } = numeric.symbolic;
	const places: number[] = [];
	const entries: number[] = [];
	const ends: number[] = [];
	const start = new Int32Array(n + 1);
	for (let r = 0; r + 1 < ptr.length; r++) {
		const [from, to] = [ptr[r], ptr[r + 1]];
		for (const j of forward(numeric, idx.subarray(from, to), values.subarray(from, to))) {
			places.push(j);
			entries.push(work[j]);
			start[j + 1]++;
			work[j] = 0;
		}
		ends.push(places.length);
	}
	for (let j = 0; j < n; j++) start[j + 1] += start[j];
	const next = start.slice(0, n);
	const sides = new Int32Array(places.length);
	const sorted = new Float64Array(places.length);
	for (let r = 0, q = 0; r < ends.length; r++)
		for (; q < ends[r]; q++) {
			const at = next[places[q]]++;
			sides[at] = r;
			sorted[at] = entries[q];
		}
	return { ptr: start, idx: sides, values: sorted };
}

/** Row by row: what follows in memory is worked on one after another. */
function backwardMany(numeric: Numeric, y: SparseColumns, x: Float64Array, count: number): void {
	const { n, lPtr, lRow } = numeric.symbolic;
	const { lower, pivots } = numeric;
	for (let j = n - 1; j >= 0; j--) {
		const at = j * count;
		const begin = lPtr[j];
		const end = lPtr[j + 1];
		let p = begin;
		// Nearly all columns of a loom have two entries at most: one pass over the row does.
		if (end - p >= 2) {
			const one = lRow[p] * count;
			const two = lRow[p + 1] * count;
			lessTwo(x, at, one, lower[p], two, lower[p + 1], count);
			p += 2;
		} else x.fill(0, at, at + count);
		for (; p < end; p++) take(x, at, lRow[p] * count, lower[p], count);
		// Few right-hand sides have an entry of their own here.
		for (let q = y.ptr[j], last = y.ptr[j + 1]; q < last; q++) {
			const r = y.idx[q];
			let own = y.values[q] / pivots[j];
			for (p = begin; p < end; p++) own -= lower[p] * x[lRow[p] * count + r];
			x[at + r] = own;
		}
	}
}

/** x[at ..] = - l1 x[one ..] - l2 x[two ..]. */
function lessTwo(
	x: Float64Array,
	at: number,
	one: number,
	l1: number,
	two: number,
	l2: number,
	width: number,
): void {
	for (let q = 0; q < width; q++) x[at + q] = -l1 * x[one + q] - l2 * x[two + q];
}

/** @internal b[to ..] -= l b[from ..]. */
export function take(b: Float64Array, to: number, from: number, l: number, width: number): void {
	for (let q = 0; q < width; q++) b[to + q] -= l * b[from + q];
}

/** @internal */
export function isZero(b: Float64Array, from: number, width: number): boolean {
	for (let q = from; q < from + width; q++) if (b[q] !== 0) return false;
	return true;
}

/**
 * Columns of A^-1, the answer to a unit right-hand side at each node given (ohms, for a conductance matrix).
 *
 * @returns n x indices.length by columns: column c at [c n, (c + 1) n), original numbering
 */
export function inverseColumns(numeric: Numeric, indices: ArrayLike<number>): Float64Array {
	const { n, perm, inverse } = numeric.symbolic;
	const columns = new Float64Array(n * indices.length);
	const x = new Float64Array(n * WIDTH);
	for (let first = 0; first < indices.length; first += WIDTH) {
		const width = Math.min(WIDTH, indices.length - first);
		x.fill(0);
		for (let r = 0; r < width; r++) {
			const i = indices[first + r];
			if (!(i >= 0 && i < n)) throw new RangeError(`node ${i} is outside 0..${n - 1}`);
			x[inverse[i] * WIDTH + r] = 1;
		}
		solveBlock(numeric, x);
		for (let r = 0; r < width; r++) {
			const base = (first + r) * n;
			for (let k = 0; k < n; k++) columns[base + perm[k]] = x[k * WIDTH + r];
		}
	}
	return columns;
}

/** All of A^-1 by columns, n x n. For small n only: 8 n^2 bytes. */
export function denseInverse(numeric: Numeric): Float64Array {
	return inverseColumns(
		numeric,
		Int32Array.from({ length: numeric.symbolic.n }, (_, i) => i),
	);
}

/** x <- (L D L^T)^-1 x for four interleaved right-hand sides in elimination order. */
function solveBlock(numeric: Numeric, x: Float64Array): void {
	requireUsable(numeric);
	const { n, lPtr, lRow } = numeric.symbolic;
	const { lower, pivots } = numeric;
	for (let j = 0; j < n; j++) {
		const at = j * WIDTH;
		const x0 = x[at];
		const x1 = x[at + 1];
		const x2 = x[at + 2];
		const x3 = x[at + 3];
		if (x0 === 0 && x1 === 0 && x2 === 0 && x3 === 0) continue;
		for (let p = lPtr[j], end = lPtr[j + 1]; p < end; p++) {
			const l = lower[p];
			const i = lRow[p] * WIDTH;
			x[i] -= l * x0;
			x[i + 1] -= l * x1;
			x[i + 2] -= l * x2;
			x[i + 3] -= l * x3;
		}
	}
	for (let j = n - 1; j >= 0; j--) {
		const at = j * WIDTH;
		const d = pivots[j];
		let x0 = x[at] / d;
		let x1 = x[at + 1] / d;
		let x2 = x[at + 2] / d;
		let x3 = x[at + 3] / d;
		for (let p = lPtr[j], end = lPtr[j + 1]; p < end; p++) {
			const l = lower[p];
			const i = lRow[p] * WIDTH;
			x0 -= l * x[i];
			x1 -= l * x[i + 1];
			x2 -= l * x[i + 2];
			x3 -= l * x[i + 3];
		}
		x[at] = x0;
		x[at + 1] = x1;
		x[at + 2] = x2;
		x[at + 3] = x3;
	}
}

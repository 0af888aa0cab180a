/**
 * X = A^-1 B for many right-hand sides together, so that each entry of L is read once for several products.
 * O(|L| columns).
 */
import { type Numeric, requireUsable } from "./factor.js";

/** Columns of the inverse taken together. */
const WIDTH = 4;

/** Right-hand sides worked on together: their part of a row is a few lines of memory, that of all rows fits a cache. */
const STRIP = 64;

/**
 * Solves A X = B, B overwritten by X.
 *
 * @param b n x count, interleaved: entry i of right-hand side r at b[i * count + r]
 */
export function solveMany(numeric: Numeric, b: Float64Array, count: number): Float64Array {
	const { n } = numeric.symbolic;
	if (b.length !== n * count) {
		throw new RangeError(`right-hand sides have ${b.length} entries, expected ${n} x ${count}`);
	}
	requireUsable(numeric);
	for (let first = 0; first < count; first += STRIP) {
		solveStrip(numeric, b, count, first, Math.min(STRIP, count - first));
	}
	return b;
}

/** Right-hand sides first .. first + width, row by row in place: what follows in memory is worked on one after another. */
function solveStrip(numeric: Numeric, b: Float64Array, count: number, first: number, width: number): void {
	const { n, perm, lPtr, lRow } = numeric.symbolic;
	const { lower, pivots } = numeric;
	for (let j = 0; j < n; j++) {
		const from = perm[j] * count + first;
		if (isZero(b, from, width)) continue;
		for (let p = lPtr[j], end = lPtr[j + 1]; p < end; p++)
			take(b, perm[lRow[p]] * count + first, from, lower[p], width);
	}
	for (let j = n - 1; j >= 0; j--) {
		const at = perm[j] * count + first;
		const d = pivots[j];
		for (let q = at; q < at + width; q++) b[q] /= d;
		for (let p = lPtr[j], end = lPtr[j + 1]; p < end; p++)
			take(b, at, perm[lRow[p]] * count + first, lower[p], width);
	}
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

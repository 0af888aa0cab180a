/**
 * Where every product l_ij d_j l_kj (i > k > j) of the elimination goes: the place of (i, k) in L.
 *
 * In the order they arise: by column j, then by k from the last, then by i. Knowing the places beforehand is the "refactorisation"
 * idea of circuit simulators (F. G. Gustavson, W. Liniger, R. Willoughby, "Symbolic generation of an optimal Crout
 * algorithm for sparse systems of linear equations", J. ACM 17 (1970) 87-109). O(products).
 */
import type { LowerStructure } from "./structure.js";

/** Lists longer than this many times |L| + n are not made: with that much fill, gathering is as good. */
const LENGTH_LIMIT = 8;

/** The list of places, or null when it would be too long. */
export function updateTargets(n: number, l: LowerStructure): Int32Array | null {
	const { lPtr, lRow, rowPtr, rowCol, rowPos } = l;
	const base = new Float64Array(n + 1); // first product of each column; may pass 2^31 before we give up
	for (let j = 0; j < n; j++) {
		const c = lPtr[j + 1] - lPtr[j];
		base[j + 1] = base[j] + (c * (c - 1)) / 2;
	}
	if (base[n] > LENGTH_LIMIT * (lPtr[n] + n)) return null;
	const targets = new Int32Array(base[n]);
	const place = new Int32Array(n);
	for (let k = 0; k < n; k++) {
		for (let p = lPtr[k], end = lPtr[k + 1]; p < end; p++) place[lRow[p]] = p;
		for (let q = rowPtr[k], last = rowPtr[k + 1]; q < last; q++) {
			const j = rowCol[q];
			const end = lPtr[j + 1];
			const m = end - rowPos[q] - 1; // entries of column j below k
			let t = base[j] + (m * (m - 1)) / 2;
			for (let p = end - m; p < end; p++) targets[t++] = place[lRow[p]];
		}
	}
	return targets;
}

/**
 * Z = A^-1 on the pattern of L + L^T, from the last column back:
 *   z_ij = -sum_{k in Struct(l_j)} z_ik l_kj  (i > j),   z_jj = 1/d_j - sum_k z_kj l_kj.
 *
 * K. Takahashi, J. Fagan, M.-S. Chin, "Formation of a sparse bus impedance matrix and its application to short
 * circuit study", Proc. 8th PICA Conf. (1973) 63-69; A. M. Erisman, W. F. Tinney, "On computing certain elements of
 * the inverse of a sparse matrix", Commun. ACM 18 (1975) 177-179.
 * Every z_ik used lies in the pattern, because Struct(l_j) is a clique of it.
 * O(sum over j of the columns named in Struct(l_j)), the order of the factorisation itself.
 */
import { type Numeric, requireUsable } from "./factor.js";

/** Entries of A^-1 on the pattern of the factor (ohms, for a conductance matrix). */
export interface SelectedInverse {
	/** A^-1_ii for every node, original numbering. */
	readonly diagonal: Float64Array;
	/** A^-1_ij in original numbering; NaN where (i, j) is outside the pattern. Every entry of A itself is inside. O(log). */
	at(i: number, j: number): number;
}

/** Computes A^-1 on the pattern of L. */
export function selectedInverse(numeric: Numeric): SelectedInverse {
	requireUsable(numeric);
	const { n, perm, inverse, lPtr, lRow } = numeric.symbolic;
	const { lower, pivots } = numeric;
	const z = new Float64Array(lower.length); // strict lower triangle, places as in lRow
	const zDiagonal = new Float64Array(n);
	const acc = new Float64Array(n); // z_ij so far
	const column = new Float64Array(n); // l_ij of the current column, scattered
	const mark = new Int32Array(n).fill(-1);
	for (let j = n - 1; j >= 0; j--) {
		const begin = lPtr[j];
		const end = lPtr[j + 1];
		for (let p = begin; p < end; p++) {
			mark[lRow[p]] = j;
			column[lRow[p]] = lower[p];
		}
		for (let p = begin; p < end; p++) {
			const k = lRow[p];
			const lkj = lower[p];
			let sum = zDiagonal[k] * lkj;
			// column k of Z holds z_ik for every i > k of Struct(l_j): use it for z_ij and, by symmetry, for z_kj
			if (p + 1 < end) {
				for (let q = lPtr[k], stop = lPtr[k + 1]; q < stop; q++) {
					const i = lRow[q];
					if (mark[i] !== j) continue;
					acc[i] -= z[q] * lkj;
					sum += z[q] * column[i];
				}
			}
			acc[k] -= sum;
		}
		let diagonal = 1 / pivots[j];
		for (let p = begin; p < end; p++) {
			const i = lRow[p];
			z[p] = acc[i];
			acc[i] = 0;
			diagonal -= z[p] * lower[p];
		}
		zDiagonal[j] = diagonal;
	}
	const diagonal = new Float64Array(n);
	for (let k = 0; k < n; k++) diagonal[perm[k]] = zDiagonal[k];
	return {
		diagonal,
		at(i, j) {
			const a = inverse[i];
			const b = inverse[j];
			if (a === undefined || b === undefined) throw new RangeError(`(${i}, ${j}) is outside 0..${n - 1}`);
			if (a === b) return zDiagonal[a];
			const p = find(lRow, lPtr[Math.min(a, b)], lPtr[Math.min(a, b) + 1], Math.max(a, b));
			return p === -1 ? Number.NaN : z[p];
		},
	};
}

/** Place of `row` in the ascending list rows[begin .. end), or -1. */
function find(rows: Int32Array, begin: number, end: number, row: number): number {
	let low = begin;
	let high = end;
	while (low < high) {
		const middle = (low + high) >> 1;
		if (rows[middle] < row) low = middle + 1;
		else high = middle;
	}
	return low < end && rows[low] === row ? low : -1;
}

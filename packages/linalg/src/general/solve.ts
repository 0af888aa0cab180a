/**
 * x = Q U^-1 L^-1 P R b,  and for the transpose  x = R P^T L^-T U^-T Q^T b. O(|L| + |U|).
 */
import { type ResidualSums, residualSums } from "../residual.js";
import { type CheckedSolution, refine } from "../symmetric/solve-checked.js";
import type { GeneralNumeric } from "./factor.js";

/** Solves A x = b, b (length n) overwritten by x. */
export function solveGeneral(numeric: GeneralNumeric, b: Float64Array): Float64Array {
	const { pivotRow, scale, lPtr, lRow, lower, uPtr, uRow, upper, pivots, work: x } = numeric;
	const { n, order } = numeric.symbolic;
	checkLength(n, b);
	for (let k = 0; k < n; k++) x[k] = b[pivotRow[k]] * scale[pivotRow[k]];
	for (let k = 0; k < n; k++) {
		const xk = x[k];
		if (xk !== 0) for (let p = lPtr[k]; p < lPtr[k + 1]; p++) x[lRow[p]] -= lower[p] * xk;
	}
	for (let k = n - 1; k >= 0; k--) {
		x[k] /= pivots[k];
		const xk = x[k];
		if (xk !== 0) for (let p = uPtr[k]; p < uPtr[k + 1]; p++) x[uRow[p]] -= upper[p] * xk;
	}
	for (let k = 0; k < n; k++) {
		b[order[k]] = x[k];
		x[k] = 0;
	}
	return b;
}

/** Solves A^T x = b (the adjoint), b (length n) overwritten by x. */
export function solveTransposed(numeric: GeneralNumeric, b: Float64Array): Float64Array {
	const { pivotRow, scale, lPtr, lRow, lower, uPtr, uRow, upper, pivots, work: x } = numeric;
	const { n, order } = numeric.symbolic;
	checkLength(n, b);
	for (let k = 0; k < n; k++) x[k] = b[order[k]];
	for (let k = 0; k < n; k++) {
		let xk = x[k];
		for (let p = uPtr[k]; p < uPtr[k + 1]; p++) xk -= upper[p] * x[uRow[p]];
		x[k] = xk / pivots[k];
	}
	for (let k = n - 1; k >= 0; k--) {
		let xk = x[k];
		for (let p = lPtr[k]; p < lPtr[k + 1]; p++) xk -= lower[p] * x[lRow[p]];
		x[k] = xk;
	}
	for (let k = 0; k < n; k++) {
		b[pivotRow[k]] = x[k] * scale[pivotRow[k]];
		x[k] = 0;
	}
	return b;
}

/** Solves A x = b (or A^T x = b) and verifies the answer against RESIDUAL_TOLERANCE; b is kept. */
export function solveGeneralChecked(
	numeric: GeneralNumeric,
	b: Float64Array,
	transposed = false,
	maxSteps = 3,
): CheckedSolution {
	checkLength(numeric.symbolic.n, b);
	return refine(
		b,
		(r) => (transposed ? solveTransposed(numeric, r) : solveGeneral(numeric, r)),
		(x) => generalResidual(numeric, x, b, transposed),
		maxSteps,
	);
}

function generalResidual(
	numeric: GeneralNumeric,
	x: Float64Array,
	b: Float64Array,
	transposed: boolean,
): ResidualSums {
	const { n, colPtr, rowIdx } = numeric.symbolic;
	const sums = residualSums(b);
	for (let j = 0; j < n; j++) {
		for (let s = colPtr[j]; s < colPtr[j + 1]; s++) {
			const row = transposed ? j : rowIdx[s];
			const term = numeric.values[s] * x[transposed ? rowIdx[s] : j];
			sums.r[row] -= term;
			sums.size[row] += Math.abs(term);
			sums.rows[row] += Math.abs(numeric.values[s]);
		}
	}
	return sums;
}

function checkLength(n: number, b: Float64Array): void {
	if (b.length !== n) throw new RangeError(`right-hand side has ${b.length} entries, expected ${n}`);
}

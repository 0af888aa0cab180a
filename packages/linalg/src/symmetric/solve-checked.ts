/**
 * x <- x + A^-1 (b - A x) while the scaled residual is above tolerance (fixed-precision refinement; R. D. Skeel,
 * "Iterative refinement implies numerical stability for Gaussian elimination", Math. Comp. 35 (1980) 817-832).
 *
 * We stop as soon as the tolerance is met: on the subtraction-free path x is right entry by entry, and a further step
 * would add the rounding of the residual, which an ill-conditioned network magnifies. O(|L| + entries) a step.
 */
import { RESIDUAL_TOLERANCE, type ResidualSums, residualSums, scaledResidual } from "../residual.js";
import type { Numeric } from "./factor.js";
import { solve } from "./solve.js";

/** Outcome of a checked solve: `ok` when the scaled residual meets RESIDUAL_TOLERANCE. */
export interface CheckedSolution {
	readonly ok: boolean;
	readonly x: Float64Array;
	/** Componentwise scaled residual of x. */
	readonly residual: number;
	/** Refinement steps taken. */
	readonly steps: number;
}

/** Solves A x = b and verifies the answer; b is kept. */
export function solveChecked(numeric: Numeric, b: Float64Array, maxSteps = 3): CheckedSolution {
	return refine(
		b,
		(r) => solve(numeric, r),
		(x) => residualOf(numeric, x, b),
		maxSteps,
	);
}

/** @internal Refinement over any solver (overwrites its argument) and residual. */
export function refine(
	b: Float64Array,
	solver: (r: Float64Array) => Float64Array,
	residual: (x: Float64Array) => ResidualSums,
	maxSteps: number,
): CheckedSolution {
	let x = solver(b.slice());
	let sums = residual(x);
	let omega = scaledResidual(sums, x, b);
	let steps = 0;
	while (omega > RESIDUAL_TOLERANCE && steps < maxSteps) {
		const dx = solver(sums.r);
		const better = x.map((v, i) => v + dx[i]);
		const betterSums = residual(better);
		const betterOmega = scaledResidual(betterSums, better, b);
		steps++;
		if (!(betterOmega < omega)) break;
		x = better;
		sums = betterSums;
		omega = betterOmega;
	}
	return { ok: omega <= RESIDUAL_TOLERANCE, x, residual: omega, steps };
}

/**
 * Residual sums of x. With row sums the residual is Kirchhoff's current law, b_i - s_i x_i - sum_j g_ij (x_i - x_j),
 * whose terms are the currents themselves.
 */
export function residualOf(numeric: Numeric, x: Float64Array, b: Float64Array): ResidualSums {
	const { n, colPtr, rowIdx } = numeric.symbolic;
	const { values, rowSums } = numeric;
	const sums = residualSums(b);
	const { r, size, rows } = sums;
	const add = (i: number, j: number, a: number) => {
		r[i] -= a * x[j];
		size[i] += Math.abs(a * x[j]);
		rows[i] += Math.abs(a);
	};
	for (let j = 0; j < n; j++) {
		if (rowSums !== null) add(j, j, rowSums[j]);
		for (let s = colPtr[j]; s < colPtr[j + 1]; s++) {
			const i = rowIdx[s];
			const a = values[s];
			if (rowSums === null) {
				add(i, j, a);
				if (i !== j) add(j, i, a);
			} else if (i !== j) {
				const flow = a * (x[i] - x[j]);
				r[i] += flow;
				r[j] -= flow;
				const scale = Math.abs(a * x[i]) + Math.abs(a * x[j]);
				size[i] += scale;
				size[j] += scale;
				rows[i] -= 2 * a;
				rows[j] -= 2 * a;
			}
		}
	}
	return sums;
}

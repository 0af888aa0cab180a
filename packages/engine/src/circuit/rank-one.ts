/**
 * Solves (A + B D B') x = r on a kept factor of A, B the incidence of a few conductors, D their conductances:
 * x = z - Z (I + D S)^-1 D B'z, with z = A^-1 r, Z = A^-1 B, S = B'Z (Sherman, Morrison, Woodbury).
 */
import { type Numeric, solve, solveSparse } from "@loomwright/linalg";
import { solveSmall } from "./small.js";

/** A conductor between two nodes (negative: the reference); negative siemens takes one away. */
export interface RankOne {
	readonly a: number;
	readonly b: number;
	readonly siemens: number;
}

/** Potential difference along a conductor. */
export function across(x: ArrayLike<number>, term: { readonly a: number; readonly b: number }): number {
	return (term.a < 0 ? 0 : x[term.a]!) - (term.b < 0 ? 0 : x[term.b]!);
}

/** A^-1 b for the incidence vector of a conductor. */
export function column(numeric: Numeric, term: { readonly a: number; readonly b: number }): Float64Array {
	const at: number[] = [];
	const values: number[] = [];
	if (term.a >= 0) {
		at.push(term.a);
		values.push(1);
	}
	if (term.b >= 0) {
		at.push(term.b);
		values.push(-1);
	}
	return solveSparse(numeric, at, values);
}

/** The solve of the changed matrix, or undefined where the low-rank form loses too many digits. */
export function updatedSolve(
	numeric: Numeric,
	terms: readonly RankOne[],
): ((rhs: Float64Array) => Float64Array) | undefined {
	const columns = terms.map((term) => column(numeric, term));
	const k = terms.length;
	const capacitance = new Float64Array(k * k);
	terms.forEach((row, i) => {
		columns.forEach((z, j) => {
			capacitance[i * k + j] = row.siemens * across(z, row) + (i === j ? 1 : 0);
		});
	});
	if (solveSmall(capacitance.slice(), new Float64Array(k), k) === undefined) return undefined;
	return (rhs) => {
		solve(numeric, rhs);
		const y = Float64Array.from(terms, (term) => term.siemens * across(rhs, term));
		solveSmall(capacitance.slice(), y, k);
		columns.forEach((z, j) => {
			const factor = y[j]!;
			if (factor !== 0) for (let i = 0; i < rhs.length; i++) rhs[i]! -= factor * z[i]!;
		});
		return rhs;
	};
}

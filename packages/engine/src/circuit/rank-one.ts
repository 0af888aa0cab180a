/**
 * Solves (A + B D B') x = r on a kept factor of A, B the incidence of a few conductors, D their conductances:
 * x = z - Z (I + D S)^-1 D B'z, with z = A^-1 r, Z = A^-1 B, S = B'Z (Sherman, Morrison, Woodbury).
 */
import { type Numeric, solve, solveSparse, solveSparseAt } from "@loomwright/linalg";
import { solveSmall } from "./small.js";

/** A conductor between two nodes (negative: the reference); negative siemens takes one away. */
export interface RankOne {
	readonly a: number;
	readonly b: number;
	readonly siemens: number;
}

/** Potential difference along a conductor. */
export function across(x: ArrayLike<number>, term: Ends): number {
	return (term.a < 0 ? 0 : x[term.a]!) - (term.b < 0 ? 0 : x[term.b]!);
}

interface Ends {
	readonly a: number;
	readonly b: number;
}

/** The nodes of a conductor without the reference, and their entries in its incidence vector. */
export function nodesOf({ a, b }: Ends): number[] {
	if (a < 0) return b < 0 ? [] : [b];
	return b < 0 ? [a] : [a, b];
}

export function weightsOf({ a, b }: Ends): number[] {
	if (a < 0) return b < 0 ? [] : [-1];
	return b < 0 ? [1] : [1, -1];
}

/** A^-1 b for the incidence vector of a conductor. */
export function column(numeric: Numeric, ends: Ends): Float64Array {
	return solveSparse(numeric, nodesOf(ends), weightsOf(ends));
}

/** Ohms between the ends of a conductor, b'A^-1 b: only the tree paths of its nodes are walked. */
export function ownOhms(numeric: Numeric, ends: Ends): number {
	const nodes = nodesOf(ends);
	const weights = weightsOf(ends);
	const z = solveSparseAt(numeric, nodes, weights, nodes);
	let ohms = 0;
	for (let q = 0; q < nodes.length; q++) ohms += weights[q]! * z[q]!;
	return ohms;
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

/** A conductor as a vector of the network: 1 at its first node, -1 at its second, the reference left out. */
import { type Numeric, solveSparse, solveSparseAt } from "@loomwright/linalg";

/** Two nodes; a negative one is the reference. */
export interface Ends {
	readonly a: number;
	readonly b: number;
}

/** Potential difference along a conductor. */
export function across(x: ArrayLike<number>, { a, b }: Ends): number {
	return (a < 0 ? 0 : x[a]!) - (b < 0 ? 0 : x[b]!);
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

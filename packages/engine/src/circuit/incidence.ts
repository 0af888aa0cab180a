/** A conductor as a vector of the network: 1 at its first node, -1 at its second, the reference left out. */
import { type Numeric, solveSparse } from "@loomwright/linalg";

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
function nodesOf({ a, b }: Ends): number[] {
	if (a < 0) return b < 0 ? [] : [b];
	return b < 0 ? [a] : [a, b];
}

function weightsOf({ a, b }: Ends): number[] {
	if (a < 0) return b < 0 ? [] : [-1];
	return b < 0 ? [1] : [1, -1];
}

/** A^-1 b for the incidence vector of a conductor. */
export function column(numeric: Numeric, ends: Ends): Float64Array {
	return solveSparse(numeric, nodesOf(ends), weightsOf(ends));
}

/** Effective resistances between points of a solved network: unit current in at one, out at the other. */
import { solveMany } from "@loomwright/linalg";
import type { Topology } from "./circuit.js";
import { ownOhms } from "./incidence.js";
import { type Operating, separated } from "./operating.js";

/** Relative rounding of an entry of the inverse, and the error up to which a difference of such is taken. */
const ROUNDING = 2 ** -52;
const GOOD = 1e-10;

/**
 * Ohms between two nodes that conduct to each other, w'A^-1 w.
 * Taken at `dead: true` it is what an ohmmeter shows.
 */
export function ohmsBetween(point: Operating<Topology>, a: number, b: number): number {
	return a === b ? 0 : ownOhms(point.numeric, { a, b });
}

/**
 * Ohms between every two of the nodes (negative: the body), z_ii + z_jj - 2 z_ij with Z = A^-1 (D. J. Klein, M. Randic,
 * 'Resistance distance', J. Math. Chem. 12, 1993). Where that leaves too few digits, the pair is found by itself.
 * Taken at `dead: true` it is what an ohmmeter shows.
 *
 * @returns m x m by rows, symmetric, zero on the diagonal; NaN where no conducting way joins the two
 * Cost: one solve per node. Memory: 8 bytes x points x m.
 */
export function resistanceMatrix(point: Operating<Topology>, nodes: readonly number[]): Float64Array {
	const m = nodes.length;
	const z = new Float64Array(point.circuit.nodes.length * m);
	nodes.forEach((node, i) => {
		if (node >= 0) z[node * m + i] = 1;
	});
	solveMany(point.numeric, z, m);
	const ohms = new Float64Array(m * m);
	for (let i = 0; i < m; i++) {
		const a = nodes[i]!;
		const own = a < 0 ? 0 : z[a * m + i]!;
		for (let j = 0; j < i; j++) {
			const b = nodes[j]!;
			const theirs = b < 0 ? 0 : z[b * m + j]!;
			const between = a < 0 ? 0 : z[a * m + j]!;
			let r = own + theirs - 2 * between;
			if (separated(point, a, b)) r = Number.NaN;
			else if (!(ROUNDING * (own + theirs) <= GOOD * r)) r = ohmsBetween(point, a, b);
			ohms[i * m + j] = r;
			ohms[j * m + i] = r;
		}
	}
	return ohms;
}

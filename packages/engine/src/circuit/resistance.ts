/** Effective resistances between points of a solved network: unit current in at one, out at the other. */
import { ConductorOhms, inverseAmong } from "@loomwright/linalg";
import type { Topology } from "./circuit.js";
import { type Operating, separated } from "./operating.js";

/** Relative rounding of an entry of the inverse, and the error up to which a difference of such is taken. */
const ROUNDING = 2 ** -52;
const GOOD = 1e-10;

/**
 * Ohms between two nodes that conduct to each other, w'A^-1 w.
 * Taken at `dead: true` it is what an ohmmeter shows.
 */
export function ohmsBetween(point: Operating<Topology>, a: number, b: number): number {
	return new ConductorOhms(point.numeric).own(a, b);
}

/**
 * Ohms between every two of the nodes (negative: the body), z_ii + z_jj - 2 z_ij with Z = A^-1 (D. J. Klein, M. Randic,
 * 'Resistance distance', J. Math. Chem. 12, 1993). Where that leaves too few digits, the pair is found by itself.
 * Taken at `dead: true` it is what an ohmmeter shows.
 *
 * @returns m x m by rows, symmetric, zero on the diagonal; NaN where no conducting way joins the two
 * Cost: m solves of the points on the nodes' way to the root of the elimination tree.
 */
export function resistanceMatrix(point: Operating<Topology>, nodes: readonly number[]): Float64Array {
	const m = nodes.length;
	const inside = nodes.filter((node) => node >= 0);
	const z = inverseAmong(point.numeric, inside);
	/** Row of each node, -1 for the body. */
	let count = 0;
	const rows = nodes.map((node) => (node < 0 ? -1 : count++));
	const between = (i: number, j: number) => (i < 0 || j < 0 ? 0 : z[i * inside.length + j]!);
	const ohms = new Float64Array(m * m);
	for (let i = 0; i < m; i++) {
		const a = nodes[i]!;
		const own = between(rows[i]!, rows[i]!);
		for (let j = 0; j < i; j++) {
			const b = nodes[j]!;
			const theirs = between(rows[j]!, rows[j]!);
			let r = own + theirs - 2 * between(rows[i]!, rows[j]!);
			if (separated(point, a, b)) r = Number.NaN;
			else if (!(ROUNDING * (own + theirs) <= GOOD * r)) r = ohmsBetween(point, a, b);
			ohms[i * m + j] = r;
			ohms[j * m + i] = r;
		}
	}
	return ohms;
}

/** Effective resistance between points of a solved network: unit current in at one, out at the other. */
import type { Topology } from "./circuit.js";
import { type Operating, voltsAt } from "./operating.js";
import { ownOhms } from "./rank-one.js";

/**
 * Ohms between two nodes that conduct to each other, w'A^-1 w.
 * Taken at `dead: true` it is what an ohmmeter shows.
 */
export function ohmsBetween(point: Operating<Topology>, a: number, b: number): number {
	if (a === b) return 0;
	if (point.change.added.length === 0) return ownOhms(point.numeric, { a, b });
	const x = new Float64Array(point.circuit.nodes.length);
	if (a >= 0) x[a] = 1;
	if (b >= 0) x[b] = -1;
	point.solve(x);
	return voltsAt(x, a) - voltsAt(x, b);
}

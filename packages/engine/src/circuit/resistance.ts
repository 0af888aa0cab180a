/** Effective resistance between points of a solved network: unit current in at one, out at the other. */
import type { Topology } from "./circuit.js";
import { ownOhms } from "./incidence.js";
import type { Operating } from "./operating.js";

/**
 * Ohms between two nodes that conduct to each other, w'A^-1 w.
 * Taken at `dead: true` it is what an ohmmeter shows.
 */
export function ohmsBetween(point: Operating<Topology>, a: number, b: number): number {
	return a === b ? 0 : ownOhms(point.numeric, { a, b });
}

/**
 * The fill-reducing order of a network's graph: leaves and chains first, approximate minimum degree on the rest.
 */
import type { Adjacency } from "./adjacency.js";
import { minimumDegree } from "./amd.js";
import { reduceSeries } from "./series.js";

/** perm[k] is the node to eliminate k-th. */
export function fillReducingOrder(n: number, graph: Adjacency): Int32Array {
	const { order, nodes, ptr, idx } = reduceSeries(n, graph);
	const perm = new Int32Array(n);
	perm.set(order);
	const rest = minimumDegree(nodes.length, ptr, idx);
	for (let k = 0; k < rest.length; k++) perm[order.length + k] = nodes[rest[k]];
	return perm;
}

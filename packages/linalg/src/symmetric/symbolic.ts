/**
 * P and Struct(L) of P A P^T = L D L^T from the pattern of A alone: order, elimination tree, postorder, structure.
 * O(|A| log n + |L| + flops of one factorisation), the ordering included on networks.
 */
import { type Adjacency, adjacency } from "../ordering/adjacency.js";
import { eliminationTree } from "../ordering/etree.js";
import { fillReducingOrder } from "../ordering/order.js";
import { postorder } from "../ordering/postorder.js";
import { checkPattern } from "../pattern.js";
import { lowerStructure, permutedRows } from "./structure.js";
import { updateTargets } from "./updates.js";

/** Everything that depends on the pattern only; reused by any number of factors. Plain typed arrays: may be posted to a worker. */
export interface Symbolic {
	readonly n: number;
	/** The pattern analysed. */
	readonly colPtr: Int32Array;
	readonly rowIdx: Int32Array;
	/** perm[k] is the original node eliminated k-th; inverse[perm[k]] = k. */
	readonly perm: Int32Array;
	readonly inverse: Int32Array;
	/** Elimination tree, postordered: parent[k] > k, -1 at a root. */
	readonly parent: Int32Array;
	/** Strict lower triangle of L by columns, rows ascending. */
	readonly lPtr: Int32Array;
	readonly lRow: Int32Array;
	/** The same entries by rows, columns ascending: entry q of row k lies in column rowCol[q] at place rowPos[q] of lRow. */
	readonly rowPtr: Int32Array;
	readonly rowCol: Int32Array;
	readonly rowPos: Int32Array;
	/** The entry of A each place of L starts from (lPtr[n] + k for pivot k), or colPtr[n] where A has none. */
	readonly source: Int32Array;
	/** Where each product of the elimination goes, see updates.ts; null where that list would be too long. */
	readonly updates: Int32Array | null;
	/** Multiplications and divisions of one factorisation. */
	readonly flops: number;
}

/** How to order: approximate minimum degree (the default), as numbered, or a given permutation. */
export type Ordering = "minimum degree" | "natural" | Int32Array;

/**
 * Orders the unknowns and finds the structure of L, once per pattern.
 *
 * @param n order of the matrix
 * @param colPtr, rowIdx pattern by columns, each off-diagonal pair once (one triangle, or a mix); diagonal entries optional
 * @throws RangeError for a malformed pattern, or a pair stored twice, with the place in the text
 */
export function analyse(
	n: number,
	colPtr: Int32Array,
	rowIdx: Int32Array,
	ordering: Ordering = "minimum degree",
): Symbolic {
	checkPattern(n, colPtr, rowIdx);
	const graph = adjacency(n, colPtr, rowIdx);
	if (graph.repeats > 0) throw new RangeError(describeRepeat(n, colPtr, rowIdx));
	return structure(n, colPtr, rowIdx, graph, chooseOrder(n, graph, ordering));
}

function chooseOrder(n: number, graph: Adjacency, ordering: Ordering): Int32Array {
	if (ordering === "minimum degree") return fillReducingOrder(n, graph);
	if (ordering === "natural") return Int32Array.from({ length: n }, (_, i) => i);
	const seen = new Uint8Array(n);
	for (const i of ordering) {
		if (i < 0 || i >= n || seen[i] === 1)
			throw new RangeError(`order is no permutation of 0..${n - 1}: ${i}`);
		seen[i] = 1;
	}
	if (ordering.length !== n) throw new RangeError(`order has ${ordering.length} entries, expected ${n}`);
	return ordering;
}

function structure(
	n: number,
	colPtr: Int32Array,
	rowIdx: Int32Array,
	graph: Adjacency,
	order: Int32Array,
): Symbolic {
	const tree = eliminationTree(n, graph.ptr, graph.idx, order, invert(order));
	const post = postorder(tree);
	const postRank = invert(post);
	const perm = new Int32Array(n);
	const parent = new Int32Array(n);
	for (let k = 0; k < n; k++) {
		perm[k] = order[post[k]];
		const up = tree[post[k]];
		parent[k] = up === -1 ? -1 : postRank[up];
	}
	const inverse = invert(perm);
	const lower = lowerStructure(n, parent, permutedRows(n, colPtr, rowIdx, inverse));
	const { lPtr, source } = lower;
	const size = lPtr[n];
	for (let j = 0; j < n; j++) {
		for (let s = colPtr[j]; s < colPtr[j + 1]; s++) {
			if (rowIdx[s] !== j) continue;
			const at = size + inverse[j];
			if (source[at] !== colPtr[n]) throw new RangeError(`diagonal entry ${j} is stored twice`);
			source[at] = s;
		}
	}
	let flops = 0;
	for (let k = 0; k < n; k++) {
		const c = lPtr[k + 1] - lPtr[k];
		flops += (c * (c + 3)) / 2;
	}
	return { n, colPtr, rowIdx, perm, inverse, parent, ...lower, updates: updateTargets(n, lower), flops };
}

function invert(perm: Int32Array): Int32Array {
	const inverse = new Int32Array(perm.length);
	for (let k = 0; k < perm.length; k++) inverse[perm[k]] = k;
	return inverse;
}

function describeRepeat(n: number, colPtr: Int32Array, rowIdx: Int32Array): string {
	const seen = new Set<number>();
	for (let j = 0; j < n; j++) {
		for (let p = colPtr[j]; p < colPtr[j + 1]; p++) {
			const i = rowIdx[p];
			const key = Math.max(i, j) * n + Math.min(i, j);
			if (i !== j && seen.has(key)) {
				return `pair (${i}, ${j}) is stored twice, again in column ${j}; store each pair once`;
			}
			seen.add(key);
		}
	}
	return "a pair is stored twice; store each pair once";
}

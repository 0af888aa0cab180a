/**
 * Struct(L) of P A P^T = L D L^T from the pattern of A alone.
 *
 * Row k of L is the set of nodes met when walking from every i < k with a_ki != 0 up the elimination tree
 * until k (A. George, J. W. H. Liu, "Computer Solution of Large Sparse Positive Definite Systems", 1981, ch. 5).
 * Column counts come from the same walk. Ordering aside, O(|A| log n + |L|).
 */
import { type Adjacency, adjacency } from "../ordering/adjacency.js";
import { eliminationTree } from "../ordering/etree.js";
import { fillReducingOrder } from "../ordering/order.js";
import { postorder } from "../ordering/postorder.js";
import { checkPattern } from "../pattern.js";

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
	/** The same entries by rows: entry q of row k lies in column rowCol[q] at place rowPos[q] of lRow. */
	readonly rowPtr: Int32Array;
	readonly rowCol: Int32Array;
	readonly rowPos: Int32Array;
	/** The entry of A each place of L starts from (lPtr[n] + k for pivot k), or colPtr[n] where A has none. */
	readonly source: Int32Array;
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
	const rank = invert(order);
	const tree = eliminationTree(n, graph.ptr, graph.idx, order, rank);
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

	// rows of the strict lower triangle of P A P^T, with the entry of A each came from
	const aPtr = new Int32Array(n + 1);
	const entries = colPtr[n];
	for (let j = 0; j < n; j++) {
		for (let s = colPtr[j]; s < colPtr[j + 1]; s++) {
			if (rowIdx[s] !== j) aPtr[Math.max(inverse[rowIdx[s]], inverse[j]) + 1]++;
		}
	}
	for (let k = 0; k < n; k++) aPtr[k + 1] += aPtr[k];
	const aCol = new Int32Array(aPtr[n]);
	const aSource = new Int32Array(aPtr[n]);
	const next = aPtr.slice(0, n);
	for (let j = 0; j < n; j++) {
		for (let s = colPtr[j]; s < colPtr[j + 1]; s++) {
			if (rowIdx[s] === j) continue;
			const a = inverse[rowIdx[s]];
			const b = inverse[j];
			const q = next[Math.max(a, b)]++;
			aCol[q] = Math.min(a, b);
			aSource[q] = s;
		}
	}

	// first walk: count rows and columns
	const mark = new Int32Array(n).fill(-1);
	const lPtr = new Int32Array(n + 1);
	const rowPtr = new Int32Array(n + 1);
	let size = 0;
	for (let k = 0; k < n; k++) {
		mark[k] = k;
		for (let q = aPtr[k]; q < aPtr[k + 1]; q++) {
			for (let j = aCol[q]; mark[j] !== k; j = parent[j]) {
				mark[j] = k;
				lPtr[j + 1]++;
				size++;
			}
		}
		rowPtr[k + 1] = size;
	}
	let flops = 0;
	for (let k = 0; k < n; k++) {
		const c = lPtr[k + 1];
		flops += (c * (c + 3)) / 2;
		lPtr[k + 1] += lPtr[k];
		next[k] = lPtr[k];
	}

	// second walk: fill; rows come in ascending order, so columns end up sorted
	const lRow = new Int32Array(size);
	const rowCol = new Int32Array(size);
	const rowPos = new Int32Array(size);
	const source = new Int32Array(size + n).fill(entries);
	const place = new Int32Array(n);
	mark.fill(-1);
	let r = 0;
	for (let k = 0; k < n; k++) {
		mark[k] = k;
		for (let q = aPtr[k]; q < aPtr[k + 1]; q++) {
			for (let j = aCol[q]; mark[j] !== k; j = parent[j]) {
				mark[j] = k;
				const p = next[j]++;
				lRow[p] = k;
				rowCol[r] = j;
				rowPos[r++] = p;
				place[j] = p;
			}
			source[place[aCol[q]]] = aSource[q];
		}
	}
	for (let j = 0; j < n; j++) {
		for (let s = colPtr[j]; s < colPtr[j + 1]; s++) {
			if (rowIdx[s] !== j) continue;
			if (source[size + inverse[j]] !== entries) throw new RangeError(`diagonal entry ${j} is stored twice`);
			source[size + inverse[j]] = s;
		}
	}
	return {
		n,
		colPtr,
		rowIdx,
		perm,
		inverse,
		parent,
		lPtr,
		lRow,
		rowPtr,
		rowCol,
		rowPos,
		source,
		flops,
	};
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

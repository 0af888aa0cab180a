/**
 * The nodes of degree two or less, eliminated before anything else, and the graph they leave.
 *
 * A leaf leaves no fill; a node between two others leaves one edge between them: the series reduction of networks.
 * Minimum degree would pick the same nodes, but a quotient graph pays for generality at each of them, and a wiring
 * network is mostly leaves and chains. Chains are thinned in rounds, every other node first (R. M. Karp,
 * V. Ramachandran, in "Handbook of Theoretical Computer Science A", 1990, list contraction), so that the elimination
 * tree of a chain of m nodes is about log2 m high, not m: sparse solves and partial refactorisations walk that height.
 * O(|A|).
 */
import type { Adjacency } from "./adjacency.js";

/** Outcome of the reduction. */
export interface Reduced {
	/** Eliminated nodes, in order. */
	readonly order: Int32Array;
	/** The nodes that remain, ascending, and the graph among them in their own numbering. */
	readonly nodes: Int32Array;
	readonly ptr: Int32Array;
	readonly idx: Int32Array;
}

/** Longest list searched for an edge that may already exist; beyond it a parallel edge is kept and merged at the end. */
const SEARCH_LIMIT = 16;

/** Eliminates all nodes whose degree is, or falls to, two or less. */
export function reduceSeries(n: number, { ptr, idx }: Adjacency): Reduced {
	const to = new Int32Array(ptr[n]); // neighbour at each place, -1 when that edge is gone
	const twin = new Int32Array(ptr[n]); // the place of the same edge at its other end
	const next = ptr.slice(0, n);
	for (let i = 0; i < n; i++) for (let p = ptr[i]; p < ptr[i + 1]; p++) to[next[idx[p]]++] = i; // sorts each list
	next.set(ptr.subarray(0, n));
	for (let i = 0; i < n; i++) {
		// lists are ascending, so the lower neighbours of a node come up in the order it lists them
		for (let p = ptr[i]; p < ptr[i + 1]; p++) {
			const j = to[p];
			if (j > i) {
				const q = next[j]++;
				twin[p] = q;
				twin[q] = p;
			}
		}
	}
	const degree = new Int32Array(n);
	const touched = new Int32Array(n); // round in which a neighbour of the node went
	const gone = new Uint8Array(n);
	const order = new Int32Array(n);
	let count = 0;
	const leaves: number[] = [];
	let now: number[] = [];
	let later: number[] = [];
	const enqueue = (i: number) => {
		if (degree[i] <= 1) leaves.push(i);
		else if (degree[i] === 2) later.push(i);
	};
	for (let i = 0; i < n; i++) {
		degree[i] = ptr[i + 1] - ptr[i];
		enqueue(i);
	}
	/** First live place of node i at or after p. */
	const live = (i: number, p: number): number => {
		let q = p;
		while (q < ptr[i + 1] && to[q] === -1) q++;
		return q;
	};
	const adjacent = (a: number, b: number): boolean => {
		const [i, j] = ptr[a + 1] - ptr[a] <= ptr[b + 1] - ptr[b] ? [a, b] : [b, a];
		const end = Math.min(ptr[i + 1], ptr[i] + SEARCH_LIMIT);
		for (let p = ptr[i]; p < end; p++) if (to[p] === j) return true;
		return false;
	};
	for (let round = 1, at = 0; ; ) {
		const leaf = leaves.pop();
		if (leaf !== undefined) {
			if (gone[leaf] === 1) continue;
			gone[leaf] = 1;
			order[count++] = leaf;
			const p = live(leaf, ptr[leaf]);
			if (p < ptr[leaf + 1]) {
				const a = to[p];
				to[twin[p]] = -1;
				degree[a]--;
				enqueue(a);
			}
			continue;
		}
		if (at === now.length) {
			if (later.length === 0) break;
			now = later;
			later = [];
			at = 0;
			round++;
			continue;
		}
		const k = now[at++];
		if (gone[k] === 1 || degree[k] !== 2) continue;
		if (touched[k] === round) {
			later.push(k);
			continue;
		}
		gone[k] = 1;
		order[count++] = k;
		const p = live(k, ptr[k]);
		const q = live(k, p + 1);
		const a = to[p];
		const b = to[q];
		touched[a] = round;
		touched[b] = round;
		const atA = twin[p];
		const atB = twin[q];
		if (a === b || adjacent(a, b)) {
			to[atA] = -1;
			to[atB] = -1;
			degree[a]--;
			degree[b]--;
			enqueue(a);
			enqueue(b);
		} else {
			to[atA] = b;
			to[atB] = a;
			twin[atA] = atB;
			twin[atB] = atA;
		}
	}
	return { order: order.subarray(0, count), ...remaining(n, ptr, to, gone, n - count) };
}

/** The graph among the nodes that are not gone, parallel edges merged. */
function remaining(n: number, ptr: Int32Array, to: Int32Array, gone: Uint8Array, count: number) {
	const nodes = new Int32Array(count);
	const rank = new Int32Array(n);
	for (let i = 0, r = 0; i < n; i++) {
		if (gone[i] === 0) {
			rank[i] = r;
			nodes[r++] = i;
		}
	}
	const restPtr = new Int32Array(count + 1);
	const rest: number[] = [];
	const seen = new Int32Array(n).fill(-1);
	for (let r = 0; r < count; r++) {
		const i = nodes[r];
		for (let p = ptr[i]; p < ptr[i + 1]; p++) {
			const j = to[p];
			if (j === -1 || seen[j] === i) continue;
			seen[j] = i;
			rest.push(rank[j]);
		}
		restPtr[r + 1] = rest.length;
	}
	return { nodes, ptr: restPtr, idx: Int32Array.from(rest) };
}

/**
 * adj(i) = { j != i : a_ij or a_ji is stored }, the graph of A + A^T without its diagonal.
 */
export interface Adjacency {
	/** Length n + 1. */
	readonly ptr: Int32Array;
	/** Neighbours of node i at idx[ptr[i] .. ptr[i+1]), each once. */
	readonly idx: Int32Array;
	/** Number of stored off-diagonal entries that repeated an edge already present. */
	readonly repeats: number;
}

/** Graph of A + A^T of a compressed-column pattern, repeats merged. O(n + entries). */
export function adjacency(n: number, colPtr: Int32Array, rowIdx: Int32Array): Adjacency {
	const ptr = new Int32Array(n + 1);
	for (let j = 0; j < n; j++) {
		for (let p = colPtr[j]; p < colPtr[j + 1]; p++) {
			const i = rowIdx[p];
			if (i !== j) {
				ptr[i + 1]++;
				ptr[j + 1]++;
			}
		}
	}
	for (let i = 0; i < n; i++) ptr[i + 1] += ptr[i];
	const idx = new Int32Array(ptr[n]);
	const next = ptr.slice(0, n);
	for (let j = 0; j < n; j++) {
		for (let p = colPtr[j]; p < colPtr[j + 1]; p++) {
			const i = rowIdx[p];
			if (i !== j) {
				idx[next[i]++] = j;
				idx[next[j]++] = i;
			}
		}
	}
	// squeeze out repeats in place
	const seen = new Int32Array(n).fill(-1);
	let top = 0;
	for (let i = 0; i < n; i++) {
		const begin = ptr[i];
		const end = ptr[i + 1];
		ptr[i] = top;
		for (let p = begin; p < end; p++) {
			const j = idx[p];
			if (seen[j] !== i) {
				seen[j] = i;
				idx[top++] = j;
			}
		}
	}
	const repeats = (ptr[n] - top) / 2;
	ptr[n] = top;
	return { ptr, idx: idx.subarray(0, top), repeats };
}

/**
 * Patterns: which entries of a square matrix are stored, in compressed columns.
 *
 * A symmetric pattern keeps each off-diagonal pair once, in whichever triangle it was given.
 */

/** Pattern of a symmetric n x n matrix: column j holds rows rowIdx[colPtr[j] .. colPtr[j+1]), each pair {i, j} once. */
export interface SymmetricPattern {
	readonly n: number;
	/** Length n + 1, starts at 0, never falls. */
	readonly colPtr: Int32Array;
	/** Length colPtr[n], entries in 0 .. n-1, any order within a column. */
	readonly rowIdx: Int32Array;
}

/** A symmetric pattern with the place of every edge and diagonal entry, ready for stamping conductances. */
export interface NetworkPattern extends SymmetricPattern {
	/** Place in `rowIdx` (and in `values`) of the diagonal entry of node i; length n. */
	readonly diagonal: Int32Array;
	/** Place in `values` of edge e, or -1 where an end is negative (the reference) or both ends are the same; length = edges. */
	readonly edge: Int32Array;
}

/** Throws RangeError unless (n, colPtr, rowIdx) is a well-formed compressed-column pattern. O(n + entries). */
export function checkPattern(n: number, colPtr: Int32Array, rowIdx: Int32Array): void {
	if (!Number.isInteger(n) || n < 0) throw new RangeError(`order must be a whole number >= 0, got ${n}`);
	if (colPtr.length !== n + 1) {
		throw new RangeError(`colPtr must have ${n + 1} entries for order ${n}, got ${colPtr.length}`);
	}
	if (colPtr[0] !== 0) throw new RangeError(`colPtr[0] must be 0, got ${colPtr[0]}`);
	for (let j = 0; j < n; j++) {
		if (colPtr[j + 1] < colPtr[j]) {
			throw new RangeError(`colPtr must not fall: column ${j} has ${colPtr[j]} then ${colPtr[j + 1]}`);
		}
	}
	if (rowIdx.length < colPtr[n]) {
		throw new RangeError(`rowIdx must have at least ${colPtr[n]} entries, got ${rowIdx.length}`);
	}
	for (let j = 0; j < n; j++) {
		for (let p = colPtr[j]; p < colPtr[j + 1]; p++) {
			const i = rowIdx[p];
			if (i < 0 || i >= n) throw new RangeError(`row ${i} in column ${j} is outside 0..${n - 1}`);
		}
	}
}

/**
 * The lower-triangle pattern of a network's conductance matrix from its edges.
 *
 * @param n number of unknown nodes, 0 .. n-1
 * @param from, to ends of each edge; a negative end is the reference node, which has no unknown
 * @returns every diagonal entry plus one entry per distinct pair; parallel edges share their entry
 * Cost O(n + edges). Stamping edge e of conductance g between u and v, both unknown:
 * `values[diagonal[u]] += g; values[diagonal[v]] += g; values[edge[e]] -= g`.
 */
export function networkPattern(n: number, from: ArrayLike<number>, to: ArrayLike<number>): NetworkPattern {
	const edges = from.length;
	if (to.length !== edges) throw new RangeError(`${edges} edge starts but ${to.length} edge ends`);
	// bucket the edges by their lower-numbered end
	const count = new Int32Array(n + 1);
	for (let e = 0; e < edges; e++) {
		const u = from[e];
		const v = to[e];
		if (u >= n || v >= n) throw new RangeError(`edge ${e} joins ${u} and ${v}, but nodes are 0..${n - 1}`);
		if (u >= 0 && v >= 0 && u !== v) count[Math.min(u, v) + 1]++;
	}
	for (let j = 0; j < n; j++) count[j + 1] += count[j];
	const bucket = new Int32Array(count[n]);
	const next = count.slice(0, n);
	for (let e = 0; e < edges; e++) {
		const u = from[e];
		const v = to[e];
		if (u >= 0 && v >= 0 && u !== v) bucket[next[Math.min(u, v)]++] = e;
	}
	const colPtr = new Int32Array(n + 1);
	const rowIdx = new Int32Array(n + count[n]);
	const diagonal = new Int32Array(n);
	const edge = new Int32Array(edges).fill(-1);
	const place = new Int32Array(n).fill(-1);
	let top = 0;
	for (let j = 0; j < n; j++) {
		colPtr[j] = top;
		diagonal[j] = top;
		rowIdx[top++] = j;
		for (let q = count[j]; q < count[j + 1]; q++) {
			const e = bucket[q];
			const i = Math.max(from[e], to[e]);
			if (place[i] <= diagonal[j]) {
				place[i] = top;
				rowIdx[top++] = i;
			}
			edge[e] = place[i];
		}
	}
	colPtr[n] = top;
	return { n, colPtr, rowIdx: rowIdx.slice(0, top), diagonal, edge };
}

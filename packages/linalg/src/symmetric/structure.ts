/**
 * Row k of L = the nodes met walking from every i < k with a_ki != 0 up the elimination tree, until one already met.
 *
 * A. George, J. W. H. Liu, "Computer Solution of Large Sparse Positive Definite Systems", Prentice-Hall 1981, ch. 5.
 * One walk lists the rows and counts the columns; two transpositions put both in ascending order. O(|A| + |L|).
 */

/** Strict lower triangle of P A P^T by rows, with the entry of A each comes from. */
interface PermutedRows {
	readonly ptr: Int32Array;
	readonly col: Int32Array;
	readonly entry: Int32Array;
	/** Entries of A, diagonal included. */
	readonly entries: number;
}

/** Structure of L; fields as in Symbolic. */
export interface LowerStructure {
	readonly lPtr: Int32Array;
	readonly lRow: Int32Array;
	readonly rowPtr: Int32Array;
	readonly rowCol: Int32Array;
	readonly rowPos: Int32Array;
	readonly source: Int32Array;
}

/** Sorts the off-diagonal entries of A into rows of P A P^T. */
export function permutedRows(
	n: number,
	colPtr: Int32Array,
	rowIdx: Int32Array,
	inverse: Int32Array,
): PermutedRows {
	const ptr = new Int32Array(n + 1);
	for (let j = 0; j < n; j++) {
		const b = inverse[j];
		for (let s = colPtr[j]; s < colPtr[j + 1]; s++) {
			const a = inverse[rowIdx[s]];
			if (a !== b) ptr[Math.max(a, b) + 1]++;
		}
	}
	for (let k = 0; k < n; k++) ptr[k + 1] += ptr[k];
	const col = new Int32Array(ptr[n]);
	const entry = new Int32Array(ptr[n]);
	const next = ptr.slice(0, n);
	for (let j = 0; j < n; j++) {
		const b = inverse[j];
		for (let s = colPtr[j]; s < colPtr[j + 1]; s++) {
			const a = inverse[rowIdx[s]];
			if (a === b) continue;
			const q = next[Math.max(a, b)]++;
			col[q] = Math.min(a, b);
			entry[q] = s;
		}
	}
	return { ptr, col, entry, entries: colPtr[n] };
}

/** Structure of L from the elimination tree and the rows of P A P^T. Diagonal places of `source` are left unset. */
export function lowerStructure(n: number, parent: Int32Array, a: PermutedRows): LowerStructure {
	const mark = new Int32Array(n).fill(-1);
	const lPtr = new Int32Array(n + 1);
	const rowPtr = new Int32Array(n + 1);
	let met = new Int32Array(2 * a.col.length + n); // columns of every row, in the order met
	let size = 0;
	for (let k = 0; k < n; k++) {
		mark[k] = k;
		if (size + k > met.length) {
			const longer = new Int32Array(2 * met.length + k);
			longer.set(met);
			met = longer;
		}
		for (let q = a.ptr[k]; q < a.ptr[k + 1]; q++) {
			for (let j = a.col[q]; mark[j] !== k; j = parent[j]) {
				mark[j] = k;
				lPtr[j + 1]++;
				met[size++] = j;
			}
		}
		rowPtr[k + 1] = size;
	}
	for (let k = 0; k < n; k++) lPtr[k + 1] += lPtr[k];

	// rows in ascending order into columns
	const lRow = new Int32Array(size);
	const source = new Int32Array(size + n).fill(a.entries);
	const next = lPtr.slice(0, n);
	for (let k = 0; k < n; k++) {
		for (let r = rowPtr[k]; r < rowPtr[k + 1]; r++) lRow[next[met[r]]++] = k;
		for (let q = a.ptr[k]; q < a.ptr[k + 1]; q++) source[next[a.col[q]] - 1] = a.entry[q];
	}

	// columns in ascending order back into rows
	const rowCol = new Int32Array(size);
	const rowPos = new Int32Array(size);
	next.set(rowPtr.subarray(0, n));
	for (let j = 0; j < n; j++) {
		for (let p = lPtr[j], end = lPtr[j + 1]; p < end; p++) {
			const r = next[lRow[p]]++;
			rowCol[r] = j;
			rowPos[r] = p;
		}
	}
	return { lPtr, lRow, rowPtr, rowCol, rowPos, source };
}

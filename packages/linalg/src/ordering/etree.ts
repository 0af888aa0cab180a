/**
 * parent(j) = min { i > j : l_ij != 0 }, the elimination tree of P A P^T.
 *
 * J. W. H. Liu, "A compact row storage scheme for Cholesky factors using elimination trees",
 * ACM Trans. Math. Softw. 12 (1986) 127-148, with path compression. O(|A| log n).
 *
 * @param ptr, idx adjacency of A in original numbering
 * @param perm perm[k] is the node eliminated k-th; inverse its inverse
 * @returns parent[k], or -1 at a root
 */
export function eliminationTree(
	n: number,
	ptr: Int32Array,
	idx: Int32Array,
	perm: Int32Array,
	inverse: Int32Array,
): Int32Array {
	const parent = new Int32Array(n).fill(-1);
	const ancestor = new Int32Array(n).fill(-1); // shortcut towards the root of the tree built so far
	for (let k = 0; k < n; k++) {
		const node = perm[k];
		for (let p = ptr[node]; p < ptr[node + 1]; p++) {
			let j = inverse[idx[p]];
			while (j !== -1 && j < k) {
				const up = ancestor[j];
				ancestor[j] = k;
				if (up === -1) parent[j] = k;
				j = up;
			}
		}
	}
	return parent;
}

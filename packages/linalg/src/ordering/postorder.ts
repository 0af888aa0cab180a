/**
 * post: a numbering of a forest in which every subtree is contiguous and precedes its root.
 *
 * Depth first without recursion. O(n).
 *
 * @param parent parent[j] > j, or -1 at a root
 * @returns post[k] is the node numbered k
 */
export function postorder(parent: Int32Array): Int32Array {
	const n = parent.length;
	const child = new Int32Array(n).fill(-1);
	const sibling = new Int32Array(n).fill(-1);
	for (let j = n - 1; j >= 0; j--) {
		const up = parent[j];
		if (up >= 0) {
			sibling[j] = child[up];
			child[up] = j;
		}
	}
	const post = new Int32Array(n);
	let k = 0;
	for (let root = 0; root < n; root++) {
		if (parent[root] !== -1) continue;
		let j = root;
		for (;;) {
			while (child[j] !== -1) j = child[j]; // down to a leaf
			post[k++] = j;
			while (j !== root && sibling[j] === -1) {
				j = parent[j]; // last child: its parent is next
				post[k++] = j;
			}
			if (j === root) break;
			j = sibling[j];
		}
	}
	return post;
}

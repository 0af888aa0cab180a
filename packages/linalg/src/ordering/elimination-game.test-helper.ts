/** Elimination on explicit neighbour sets: eliminating a node joins all its neighbours. The obvious reference. */

type Graph = Set<number>[];

/** Neighbour sets from an adjacency structure. */
export function graphOf(n: number, ptr: Int32Array, idx: Int32Array): Graph {
	return Array.from({ length: n }, (_, i) => new Set(idx.subarray(ptr[i], ptr[i + 1])));
}

function eliminate(graph: Graph, k: number): number[] {
	const clique = [...graph[k]];
	for (const i of clique) {
		graph[i].delete(k);
		for (const j of clique) if (j !== i) graph[i].add(j);
	}
	graph[k].clear();
	return clique;
}

/** Struct of every column of L, in elimination positions, ascending. */
export function columnsOfL(n: number, ptr: Int32Array, idx: Int32Array, perm: ArrayLike<number>): number[][] {
	const graph = graphOf(n, ptr, idx);
	const rank = new Map(Array.from(perm, (i, k) => [i, k]));
	return Array.from(perm, (i) =>
		eliminate(graph, i)
			.map((j) => rank.get(j) as number)
			.sort((a, b) => a - b),
	);
}

/** Entries below the diagonal of L for a given order. */
export function fill(n: number, ptr: Int32Array, idx: Int32Array, perm: ArrayLike<number>): number {
	return columnsOfL(n, ptr, idx, perm).reduce((sum, column) => sum + column.length, 0);
}

/** Always a node of exactly least degree, lowest number first. */
export function exactMinimumDegree(n: number, ptr: Int32Array, idx: Int32Array): number[] {
	const graph = graphOf(n, ptr, idx);
	const left = new Set(graph.keys());
	const order: number[] = [];
	while (left.size > 0) {
		let best = -1;
		for (const i of left) if (best === -1 || graph[i].size < graph[best].size) best = i;
		eliminate(graph, best);
		left.delete(best);
		order.push(best);
	}
	return order;
}

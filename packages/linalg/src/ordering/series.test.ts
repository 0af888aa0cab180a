import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { networks, runs } from "../random-network.test-helper.js";
import { analyse } from "../symmetric/symbolic.js";
import { adjacency } from "./adjacency.js";
import { graphOf } from "./elimination-game.test-helper.js";
import { reduceSeries } from "./series.js";

describe("reduceSeries", () => {
	it("eliminates only nodes of degree two or less, and leaves exactly the graph that elimination leaves", () => {
		fc.assert(
			fc.property(networks(1, 1), ({ n, pattern }) => {
				const adj = adjacency(n, pattern.colPtr, pattern.rowIdx);
				const { order, nodes, ptr, idx } = reduceSeries(n, adj);
				const graph = graphOf(n, adj.ptr, adj.idx);
				for (const k of order) {
					const clique = [...graph[k]];
					expect(clique.length).toBeLessThanOrEqual(2);
					for (const i of clique) {
						graph[i].delete(k);
						for (const j of clique) if (j !== i) graph[i].add(j);
					}
					graph[k].clear();
				}
				expect(order.length + nodes.length).toBe(n);
				nodes.forEach((i, r) => {
					expect(new Set([...idx.subarray(ptr[r], ptr[r + 1])].map((q) => nodes[q]))).toEqual(graph[i]);
					expect(ptr[r + 1] - ptr[r]).toBe(graph[i].size);
					expect(graph[i].size).toBeGreaterThan(2);
				});
			}),
			runs(300),
		);
	});

	it("makes a chain of 1024 nodes about log2 n high", () => {
		const n = 1024;
		const colPtr = Int32Array.from({ length: n + 1 }, (_, j) => Math.min(j, n - 1));
		const rowIdx = Int32Array.from({ length: n - 1 }, (_, j) => j + 1);
		const ring = { colPtr: colPtr.slice(), rowIdx: Int32Array.from([...rowIdx, 0]) };
		ring.colPtr[n] = n; // closed, so that there are no leaves to peel from the ends
		const { parent } = analyse(n, ring.colPtr, ring.rowIdx);
		const depth = new Int32Array(n);
		for (let k = n - 1; k >= 0; k--) depth[k] = parent[k] === -1 ? 1 : depth[parent[k]] + 1;
		expect(Math.max(...depth)).toBeLessThanOrEqual(2 * Math.log2(n));
	});
});

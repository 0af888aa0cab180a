import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { networks, runs } from "../random-network.test-helper.js";
import { type Adjacency, adjacency } from "./adjacency.js";
import { minimumDegree } from "./amd.js";
import { exactMinimumDegree, fill } from "./elimination-game.test-helper.js";
import { fillReducingOrder } from "./order.js";

function graph(n: number, edges: [number, number][]): Adjacency {
	const colPtr = new Int32Array(n + 1);
	const rows: number[] = [];
	for (let j = 0; j < n; j++) {
		for (const [u, v] of edges) if (u === j) rows.push(v);
		colPtr[j + 1] = rows.length;
	}
	return adjacency(n, colPtr, Int32Array.from(rows));
}

const isPermutation = (n: number, perm: Int32Array) =>
	[...perm].sort((a, b) => a - b).every((v, i) => v === i) && perm.length === n;

const orders = {
	minimumDegree,
	"leaves and chains first": (n: number, ptr: Int32Array, idx: Int32Array) =>
		fillReducingOrder(n, { ptr, idx, repeats: 0 }),
};

/** Graphs of any density, not only networks. */
const graphs = fc
	.integer({ min: 1, max: 30 })
	.chain((n) =>
		fc
			.array(fc.tuple(fc.nat(n - 1), fc.nat(n - 1)), { maxLength: 4 * n })
			.map((pairs) => ({ n, ...graph(n, pairs as [number, number][]) })),
	);

function grid(width: number, height: number): Adjacency & { n: number } {
	const edges: [number, number][] = [];
	for (let y = 0; y < height; y++) {
		for (let x = 0; x < width; x++) {
			if (x > 0) edges.push([y * width + x - 1, y * width + x]);
			if (y > 0) edges.push([(y - 1) * width + x, y * width + x]);
		}
	}
	return { n: width * height, ...graph(width * height, edges) };
}

describe.each(Object.entries(orders))("%s", (_, order) => {
	it("is a permutation of any graph", () => {
		fc.assert(
			fc.property(graphs, ({ n, ptr, idx }) => {
				expect(isPermutation(n, order(n, ptr, idx))).toBe(true);
			}),
			runs(500),
		);
	});

	it("makes no fill on a tree", () => {
		fc.assert(
			fc.property(fc.array(fc.nat(1e6), { minLength: 1, maxLength: 60 }), (ups) => {
				const n = ups.length + 1;
				const { ptr, idx } = graph(
					n,
					ups.map((up, i) => [i + 1, up % (i + 1)]),
				);
				expect(fill(n, ptr, idx, order(n, ptr, idx))).toBe(n - 1);
			}),
			runs(100),
		);
	});

	it("fills L no more than 1.3 times exact minimum degree on any graph, and 1.001 times over all of them", () => {
		let ours = 0;
		let exact = 0;
		fc.assert(
			fc.property(
				fc.oneof(
					graphs,
					networks(1, 1).map(({ n, pattern }) => ({ n, ...adjacency(n, pattern.colPtr, pattern.rowIdx) })),
				),
				({ n, ptr, idx }) => {
					const a = n + fill(n, ptr, idx, order(n, ptr, idx));
					const b = n + fill(n, ptr, idx, exactMinimumDegree(n, ptr, idx));
					expect(a).toBeLessThanOrEqual(1.3 * b);
					ours += a;
					exact += b;
				},
			),
			runs(500),
		);
		expect(ours).toBeLessThanOrEqual(1.001 * exact);
	});

	it.each([8, 16, 24])(
		"stays under 7.75 n log2 n entries on a square grid of side %i (the nested dissection bound)",
		(side) => {
			// A. George, SIAM J. Numer. Anal. 10 (1973) 345-363: nested dissection gives at most 31/4 n log2 n + O(n)
			const { n, ptr, idx } = grid(side, side);
			const entries = n + fill(n, ptr, idx, order(n, ptr, idx));
			expect(entries).toBeLessThanOrEqual(7.75 * n * Math.log2(n));
			const exact = n + fill(n, ptr, idx, exactMinimumDegree(n, ptr, idx));
			expect(entries).toBeLessThanOrEqual(1.3 * exact);
		},
	);

	it("survives lists that outgrow their storage", () => {
		// star of cliques: elements are made at the end of storage over and over
		const n = 400;
		const edges: [number, number][] = [];
		for (let i = 0; i < n; i++) for (let d = 1; d <= 6; d++) edges.push([i, (i * 7 + d * d * 13) % n]);
		const { ptr, idx } = graph(
			n,
			edges.filter(([u, v]) => u !== v),
		);
		expect(isPermutation(n, order(n, ptr, idx))).toBe(true);
	});
});

describe("minimumDegree with dense nodes", () => {
	it("is a permutation when nodes are set aside as dense", () => {
		fc.assert(
			fc.property(fc.integer({ min: 40, max: 120 }), fc.integer({ min: 1, max: 3 }), (n, hubs) => {
				const edges: [number, number][] = [];
				for (let h = 0; h < hubs; h++) for (let i = hubs; i < n; i++) edges.push([h, i]);
				for (let i = hubs + 1; i < n; i += 2) edges.push([i - 1, i]);
				const { ptr, idx } = graph(n, edges);
				const perm = minimumDegree(n, ptr, idx, 1);
				expect(isPermutation(n, perm)).toBe(true);
				expect([...perm.subarray(n - hubs)].sort((a, b) => a - b)).toEqual([...Array(hubs).keys()]);
			}),
			runs(30),
		);
	});
});

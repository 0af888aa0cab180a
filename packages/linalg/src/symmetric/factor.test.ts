import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
	assemble,
	fullMatrix,
	mlSolve,
	networks,
	normDifference,
	runs,
} from "../random-network.test-helper.js";
import { eliminate, factor, refactor, release, smallestPivot } from "./factor.js";
import { solve } from "./solve.js";
import { analyse } from "./symbolic.js";

const ints = (...v: number[]) => Int32Array.from(v);
const reals = (...v: number[]) => Float64Array.from(v);

function must(result: ReturnType<typeof factor>) {
	if (!result.ok) throw new Error(`${result.reason} at ${result.node}`);
	return result.numeric;
}

describe("factor", () => {
	it("gives L and D of a 3 x 3 by hand", () => {
		// [4 -2 0; -2 5 -1; 0 -1 3]: d = 4, 5 - 1 = 4, 3 - 1/4 = 11/4; l21 = -1/2, l32 = -1/4
		const s = analyse(3, ints(0, 2, 4, 5), ints(0, 1, 1, 2, 2), "natural");
		const f = must(factor(s, reals(4, -2, 5, -1, 3)));
		expect([...f.pivots]).toEqual([4, 4, 2.75]);
		expect([...f.lower]).toEqual([-0.5, -0.25]);
		expect(smallestPivot(f)).toEqual({ node: 1, pivot: 4, ratio: 0.8 });
	});

	it("multiplies back to the matrix", () => {
		fc.assert(
			fc.property(networks(1e-2, 1e2), fc.boolean(), (net, withSums) => {
				const s = analyse(net.n, net.pattern.colPtr, net.pattern.rowIdx);
				const f = must(withSums ? factor(s, net.values, net.rowSums) : factor(s, net.values));
				const l = Array.from({ length: net.n }, (_, i) =>
					Float64Array.from({ length: net.n }, (_, j) => (i === j ? 1 : 0)),
				);
				for (let j = 0; j < net.n; j++)
					for (let p = s.lPtr[j]; p < s.lPtr[j + 1]; p++) l[s.lRow[p]][j] = f.lower[p];
				const size = Math.max(...net.values);
				for (let j = 0; j < net.n; j++) {
					for (let e = net.pattern.colPtr[j]; e < net.pattern.colPtr[j + 1]; e++) {
						const a = s.inverse[net.pattern.rowIdx[e]];
						const b = s.inverse[j];
						const product = l[a].reduce((sum, v, k) => sum + v * f.pivots[k] * l[b][k], 0);
						expect(Math.abs(product - net.values[e])).toBeLessThan(1e-13 * size);
					}
				}
			}),
			runs(100),
		);
	});

	it("takes the memory of a released factor, with the bits of a fresh one", () => {
		fc.assert(
			fc.property(networks(1e-2, 1e2), fc.boolean(), (net, withSums) => {
				const s = analyse(net.n, net.pattern.colPtr, net.pattern.rowIdx);
				const make = () => must(factor(s, net.values, withSums ? net.rowSums : undefined));
				const first = make();
				const store = first.store.slice();
				const b = Float64Array.from({ length: net.n }, (_, i) => i - 1);
				const x = solve(first, b.slice());
				release(first);
				const second = make();
				expect(second.store.buffer).toBe(first.store.buffer);
				expect([second.store, solve(second, b.slice())]).toEqual([store, x]);
				// There is one to take: the next one has memory of its own, and what was handed back twice is given once.
				release(first);
				const third = make();
				expect(third.store.buffer).not.toBe(second.store.buffer);
				expect(solve(second, b.slice())).toEqual(x);
				expect(() => solve(first, b.slice())).toThrow("this factor was released");
				expect(() => refactor(first, net.values, withSums ? net.rowSums : undefined)).toThrow(
					"this factor was released",
				);
			}),
			runs(60),
		);
	});

	it("refactors to the same bits as factoring afresh, in the same memory", () => {
		fc.assert(
			fc.property(networks(1e-2, 1e2), fc.boolean(), (net, withSums) => {
				const s = analyse(net.n, net.pattern.colPtr, net.pattern.rowIdx);
				const sums = withSums ? net.rowSums : undefined;
				const twice = (v: Float64Array) => v.map((x) => 1.7 * x);
				const f = must(factor(s, twice(net.values), sums && twice(sums)));
				const before = f.store;
				must(refactor(f, net.values, sums));
				expect(f.store).toBe(before);
				expect(f.store).toEqual(must(factor(s, net.values, sums)).store);
			}),
			runs(60),
		);
	});

	it("gives the same bits gathering column by column as by the list of update places", () => {
		fc.assert(
			fc.property(networks(1e-4, 1e7), fc.boolean(), (net, withSums) => {
				const s = analyse(net.n, net.pattern.colPtr, net.pattern.rowIdx);
				expect(s.updates).not.toBeNull();
				const plain = { ...s, updates: null };
				const sums = withSums ? net.rowSums : undefined;
				const a = factor(s, net.values, sums);
				const b = factor(plain, net.values, sums);
				expect(a.ok).toBe(b.ok);
				if (a.ok && b.ok) {
					expect(a.numeric.store).toEqual(b.numeric.store);
					expect(eliminate(a.numeric, null)).toBe(-1);
					expect(a.numeric.store).toEqual(b.numeric.store);
				}
			}),
			runs(200),
		);
	});

	it("does without the list where fill would make it long", () => {
		// a complete graph of 40: 780 entries of L, 9,880 products
		const n = 40;
		const from: number[] = [];
		const to: number[] = [];
		for (let i = 0; i < n; i++)
			for (let j = -1; j < i; j++) {
				from.push(i);
				to.push(j);
			}
		const net = assemble(
			n,
			from,
			to,
			from.map((_, e) => 1 + (e % 7)),
		);
		const s = analyse(n, net.pattern.colPtr, net.pattern.rowIdx);
		expect(s.updates).toBeNull();
		const x = solve(must(factor(s, net.values, net.rowSums)), new Float64Array(n).fill(1));
		expect(normDifference(x, mlSolve(fullMatrix(net), new Float64Array(n).fill(1)))).toBeLessThan(1e-12);
	});

	it("names the original node where positive definiteness ends, and recovers", () => {
		// [1 2; 2 1] fails at the second pivot, 1 - 4 = -3
		const s = analyse(2, ints(0, 2, 3), ints(0, 1, 1), ints(1, 0));
		expect(factor(s, reals(1, 2, 1))).toEqual({
			ok: false,
			reason: "not positive definite",
			node: s.perm[1],
			step: 1,
			pivot: -3,
		});
		const f = must(factor(s, reals(2, 1, 2)));
		const good = f.store.slice();
		expect(refactor(f, reals(1, 2, 1)).ok).toBe(false);
		must(refactor(f, reals(2, 1, 2)));
		expect(f.store).toEqual(good);
	});

	it("calls a missing diagonal entry not positive definite", () => {
		const s = analyse(1, ints(0, 0), ints());
		expect(factor(s, reals())).toMatchObject({ ok: false, node: 0, pivot: 0 });
	});

	it("loses nothing where a leak of 1e-8 S hangs behind 1e4 S, with row sums", () => {
		// 0 -1e4 S- 1 -1e-8 S- reference: 1 A in gives 1e8 V; subtraction alone cannot see the leak beyond 4 digits
		const net = assemble(2, [0, 1], [1, -1], [1e4, 1e-8]);
		const s = analyse(2, net.pattern.colPtr, net.pattern.rowIdx, "natural");
		expect(must(factor(s, net.values, net.rowSums)).pivots[1]).toBe(1e-8);
		const plain = must(factor(s, net.values));
		expect(Math.abs(plain.pivots[1] - 1e-8)).toBeGreaterThan(1e-14);
		expect(smallestPivot(plain).ratio).toBeLessThan(1e-11);
	});

	it("refuses misuse by name", () => {
		const s = analyse(2, ints(0, 2, 3), ints(0, 1, 1));
		expect(() => factor(s, reals(1, 2))).toThrow("expected 3 values, got 2");
		expect(() => factor(s, reals(1, Number.NaN, 1))).toThrow("value 1 is NaN, not a finite number");
		expect(() => factor(s, reals(1, 0.5, 1), reals(1, 1))).toThrow("entry (1, 0) is 0.5");
		expect(() => factor(s, reals(1, -0.5, 1), reals(1, -1))).toThrow("row sum 1 is -1");
		expect(() => factor(s, reals(1, -0.5, 1), reals(1))).toThrow("expected 2 row sums, got 1");
		expect(() => refactor(must(factor(s, reals(1, 0, 1))), reals(1, 0, 1), reals(1, 1))).toThrow("row sums");
	});
});

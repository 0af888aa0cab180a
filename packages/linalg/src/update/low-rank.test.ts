import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { exactSolve } from "../exact.test-helper.js";
import { assemble, networks, normDifference, runs, type TestNetwork } from "../random-network.test-helper.js";
import { RESIDUAL_TOLERANCE } from "../residual.js";
import { factor, type Numeric } from "../symmetric/factor.js";
import { solve } from "../symmetric/solve.js";
import { solveSparse } from "../symmetric/solve-sparse.js";
import { analyse } from "../symmetric/symbolic.js";
import { AMPLIFICATION_LIMIT, edgeColumns, lowRankUpdate, solveUpdated } from "./low-rank.js";

function factored(net: TestNetwork): Numeric {
	const result = factor(analyse(net.n, net.pattern.colPtr, net.pattern.rowIdx), net.values, net.rowSums);
	if (!result.ok) throw new Error(result.reason);
	return result.numeric;
}

/** The update that multiplies the conductance of the given edges. */
function change(net: TestNetwork, numeric: Numeric, edges: number[], factors: number[]) {
	const u = edgeColumns(
		edges.map((e) => net.from[e]),
		edges.map((e) => net.to[e]),
	);
	const z = edges.map((_, t) =>
		solveSparse(numeric, u.idx.subarray(u.ptr[t], u.ptr[t + 1]), u.values.subarray(u.ptr[t], u.ptr[t + 1])),
	);
	const c = Float64Array.from(edges, (e, t) => net.siemens[e] * (factors[t] - 1));
	const changed = assemble(
		net.n,
		net.from,
		net.to,
		net.siemens.map((g, e) => (edges.includes(e) ? g * factors[edges.indexOf(e)] : g)),
	);
	return { update: lowRankUpdate((t) => z[t], u, c), changed };
}

const changes = (low: number, high: number, maxNodes = 40) =>
	fc.record({
		net: networks(low, high, maxNodes),
		picks: fc.uniqueArray(fc.nat(200), { minLength: 1, maxLength: 4 }),
		exponents: fc.array(fc.double({ min: -8, max: 6, noNaN: true }), { minLength: 4, maxLength: 4 }),
	});
const edgesOf = (net: TestNetwork, picks: number[]) => [...new Set(picks.map((p) => p % net.from.length))];

describe("lowRankUpdate", () => {
	it("equals refactoring on networks of 0.1 to 100 ohm, edges opened or shorted by up to eight decades", () => {
		let used = 0;
		let refused = 0;
		fc.assert(
			fc.property(changes(1e-1, 1e2), ({ net, picks, exponents }) => {
				const edges = edgesOf(net, picks);
				const numeric = factored(net);
				const { update, changed } = change(
					net,
					numeric,
					edges,
					exponents.map((e) => 10 ** e),
				);
				if (!update.ok) {
					refused++;
					return;
				}
				used++;
				const b = Float64Array.from({ length: net.n }, (_, i) => 1 + Math.sin(i));
				const again = solve(factored(changed), b.slice());
				expect(normDifference(update.apply(solve(numeric, b.slice())), again)).toBeLessThan(1e-8);
				const answer = solveUpdated(numeric, update, b);
				expect(answer.ok).toBe(true);
				expect(answer.residual).toBeLessThanOrEqual(RESIDUAL_TOLERANCE);
				expect(normDifference(answer.x, again)).toBeLessThan(1e-8);
				const wanted = [0, net.n - 1];
				update.applyAt(solve(numeric, b.slice()), wanted).forEach((v, q) => {
					expect(Math.abs(v - again[wanted[q]])).toBeLessThan(1e-8 * Math.max(...again));
				});
			}),
			runs(400),
		);
		expect(used).toBeGreaterThan(3 * refused);
		expect(refused).toBeGreaterThan(0);
	});

	it("is right by exact arithmetic within what the amplification says, on 1e-4 to 1e7 ohm", () => {
		let refused = 0;
		fc.assert(
			fc.property(changes(1e-4, 1e7, 8), ({ net, picks, exponents }) => {
				const edges = edgesOf(net, picks);
				const numeric = factored(net);
				const { update, changed } = change(
					net,
					numeric,
					edges,
					exponents.map((e) => 10 ** Math.round(e)),
				);
				if (!update.ok) {
					refused++;
					return;
				}
				const b = Float64Array.from({ length: net.n }, (_, i) => (i === 0 ? 1 : 0));
				const x = update.apply(solve(numeric, b.slice()));
				expect(normDifference(x, exactSolve(changed, b))).toBeLessThan(1e-8);
			}),
			runs(200),
		);
		expect(refused).toBeGreaterThan(0);
	});

	it("refuses to open the only path of a part left on 1e9 ohm", () => {
		const net = assemble(2, [0, 0, 1], [-1, 1, -1], [1, 1e2, 1e-9]);
		const numeric = factored(net);
		const { update } = change(net, numeric, [1], [0]);
		expect(update).toMatchObject({ ok: false, reason: "inaccurate" });
		expect(update.amplification).toBeGreaterThan(AMPLIFICATION_LIMIT);
	});

	it("never passes off a part cut loose entirely as solvable", () => {
		const net = assemble(3, [0, 0, 1], [-1, 1, 2], [1, 0.3, 0.7]);
		const { update } = change(net, factored(net), [1], [0]);
		expect(update.ok).toBe(false);
	});

	it("opens one of two equal paths by hand", () => {
		// two 2 ohm resistors from node 0 to the reference: 1 A gives 1 V; with one open, 2 V
		const net = assemble(1, [0, 0], [-1, -1], [0.5, 0.5]);
		const numeric = factored(net);
		const { update } = change(net, numeric, [0], [0]);
		if (!update.ok) throw new Error(update.reason);
		expect(update.apply(Float64Array.of(1))[0]).toBe(2);
		expect(update.amplification).toBe(3); // (1 + 1/2) / (1 - 1/2)
	});

	it("leaves x alone when nothing changes, terms of c = 0 among others included", () => {
		const net = assemble(3, [0, 0, 1], [-1, 1, 2], [1, 2, 3]);
		const numeric = factored(net);
		const none = change(net, numeric, [1], [1]).update;
		if (!none.ok) throw new Error(none.reason);
		expect([...none.apply(Float64Array.of(3, 2, 1))]).toEqual([3, 2, 1]);
		const one = change(net, numeric, [1, 2], [1, 4]).update;
		const alone = change(net, numeric, [2], [4]).update;
		if (!one.ok || !alone.ok) throw new Error("refused");
		expect(
			normDifference(one.apply(Float64Array.of(3, 2, 1)), alone.apply(Float64Array.of(3, 2, 1))),
		).toBeLessThan(1e-15);
	});

	it("says not ok when the columns do not belong to the factor", () => {
		const net = assemble(3, [0, 0, 1, 2], [-1, 1, 2, 0], [1, 2, 3, 4]);
		const numeric = factored(net);
		const u = edgeColumns([1], [2]);
		const wrong = Float64Array.of(0.1, 0.2, -0.3);
		const update = lowRankUpdate(() => wrong, u, Float64Array.of(2));
		if (!update.ok) throw new Error(update.reason);
		expect(solveUpdated(numeric, update, Float64Array.of(0, 1, 0), 1).ok).toBe(false);
	});

	it("refuses columns and changes of different number", () => {
		expect(() =>
			lowRankUpdate(() => new Float64Array(1), edgeColumns([0], [-1]), new Float64Array(2)),
		).toThrow("U has 1 columns but c 2 entries");
	});
});

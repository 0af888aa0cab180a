/**
 * One suite, every engine. Independent judges: ml-matrix's dense LU, and exact rational arithmetic.
 *
 * Differences are max_i |x_i - y_i| / max_i |y_i| unless said otherwise.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Prepared } from "./dense/reference.js";
import { engines } from "./engines.test-helper.js";
import { exactSolve } from "./exact.test-helper.js";
import {
	assemble,
	condition,
	fullMatrix,
	loaded,
	mlSolve,
	networks,
	normDifference,
	runs,
	type TestNetwork,
} from "./random-network.test-helper.js";

/** A network in which no part is held to the reference only by a path thousands of times weaker than its own edges. */
const moderate = loaded(networks(1e-1, 1e2));
/** 1e-4 to 1e7 ohm in one network. */
const harsh = loaded(networks(1e-4, 1e7));

/** 500 networks of each sort with the answer of ml-matrix and the difference allowed. */
const moderateCases = fc.sample(moderate, { numRuns: 500, seed: 20 }).map(({ net, b }) => ({
	net,
	b,
	x: mlSolve(fullMatrix(net), b),
	allowed: 1e-9,
}));
const harshCases = fc
	.sample(harsh, { numRuns: 1200, seed: 21 })
	.map(({ net, b }) => ({ net, b, a: fullMatrix(net) }))
	.map((c) => ({ ...c, kappa: condition(c.a) }))
	// about half go: there a dense factorisation of the assembled matrix has under four digits to compare with
	.filter(({ kappa }) => kappa * Number.EPSILON < 1e-4)
	.slice(0, 500)
	// both sides solve the assembled matrix, whose own rounding moves x by eps kappa
	.map(({ net, b, a, kappa }) => ({ net, b, x: mlSolve(a, b), allowed: 1e-9 + 20 * Number.EPSILON * kappa }));

function must(prepared: Prepared) {
	if (!prepared.ok) throw new Error(`no factor, stopped at node ${prepared.node}`);
	return prepared;
}

describe.each(engines)("$engine.name", ({ engine }) => {
	const solver = (net: TestNetwork) => must(engine.prepare(net.pattern, net.values, net.rowSums));

	it("solves two resistors in series by hand", () => {
		// 1 A into node 1, 2 ohm to node 0, 3 ohm to the reference: 3 V and 5 V
		const net = assemble(2, [0, 0], [-1, 1], [1 / 3, 1 / 2]);
		const x = solver(net).solve(Float64Array.of(0, 1));
		expect(x[0]).toBeCloseTo(3, 12);
		expect(x[1]).toBeCloseTo(5, 12);
	});

	it.each([
		["of 0.1 to 100 ohm, to 1e-9", moderateCases],
		["of 1e-4 to 1e7 ohm, as far as their condition allows", harshCases],
	])("agrees with ml-matrix on 500 networks %s", (_, cases) => {
		expect(cases).toHaveLength(500);
		cases.forEach(({ net, b, x, allowed }, q) => {
			expect(normDifference(solver(net).solve(b), x), `network ${q}, ${net.n} nodes`).toBeLessThan(allowed);
		});
	});

	it("superposes", () => {
		fc.assert(
			fc.property(moderate, fc.double({ min: -3, max: 3, noNaN: true }), ({ net, b }, t) => {
				const { solve } = solver(net);
				const c = b.map((v, i) => Math.sin(i) + v * v);
				const sum = solve(b.map((v, i) => v + t * c[i]));
				const x = solve(b);
				const y = solve(c);
				const size = Math.max(...x.map(Math.abs), ...y.map(Math.abs), 1e-300);
				for (let i = 0; i < net.n; i++) expect(Math.abs(sum[i] - x[i] - t * y[i])).toBeLessThan(1e-9 * size);
			}),
			runs(60),
		);
	});

	it("is reciprocal: the potential at j from a current at i is that at i from j", () => {
		fc.assert(
			fc.property(networks(1e-1, 1e2), fc.nat(), fc.nat(), (net, p, q) => {
				const { solve } = solver(net);
				const unit = (i: number) => Float64Array.from({ length: net.n }, (_, k) => (k === i ? 1 : 0));
				const i = p % net.n;
				const j = q % net.n;
				const there = solve(unit(i))[j];
				const back = solve(unit(j))[i];
				expect(Math.abs(there - back)).toBeLessThanOrEqual(1e-9 * Math.max(there, back));
			}),
			runs(60),
		);
	});

	it("halves every potential, to the last bit, when every conductance doubles", () => {
		fc.assert(
			fc.property(moderate, ({ net, b }) => {
				const double = assemble(
					net.n,
					net.from,
					net.to,
					net.siemens.map((g) => 2 * g),
				);
				const x = solver(net).solve(b);
				expect(solver(double).solve(b)).toEqual(x.map((v) => v / 2));
			}),
			runs(60),
		);
	});

	it("keeps every potential between those of its neighbours and the reference (maximum principle)", () => {
		fc.assert(
			fc.property(networks(1e-1, 1e2), fc.nat(), (net, p) => {
				const b = new Float64Array(net.n);
				b[p % net.n] = 1;
				const x = solver(net).solve(b);
				const top = x[p % net.n];
				for (const v of x) {
					expect(v).toBeGreaterThanOrEqual(-1e-12 * top);
					expect(v).toBeLessThanOrEqual(top * (1 + 1e-12));
				}
			}),
			runs(60),
		);
	});

	it("says where a floating part is", () => {
		// nodes 2 and 3 touch nothing else
		const net = assemble(4, [0, 0, 2], [-1, 1, 3], [1, 1, 2]);
		const result = engine.prepare(net.pattern, net.values, net.rowSums);
		expect(result.ok).toBe(false);
		if (!result.ok) expect([2, 3]).toContain(result.node);
	});

	it("takes a network of no nodes", () => {
		const net = assemble(0, [], [], []);
		expect(solver(net).solve(new Float64Array(0))).toHaveLength(0);
	});
});

describe.each(engines.filter(({ accurate }) => accurate))("$engine.name", ({ engine }) => {
	it("has every potential right to 1e-13 of itself on ill-conditioned networks, by exact arithmetic", () => {
		fc.assert(
			fc.property(loaded(networks(1e-4, 1e7, 9)), ({ net, b }) => {
				// currents of one sign: with both, x itself can be a small difference of large potentials
				const supply = b.map(Math.abs);
				const x = must(engine.prepare(net.pattern, net.values, net.rowSums)).solve(supply);
				exactSolve(net, supply).forEach((y, i) => {
					expect(Math.abs(x[i] - y)).toBeLessThanOrEqual(1e-13 * y);
				});
			}),
			runs(100),
		);
	});
});

/** The solves that are not the plain one: many at once, sparse, inverse entries, checked. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { loaded, networks, runs, type TestNetwork } from "../random-network.test-helper.js";
import { RESIDUAL_TOLERANCE, scaledResidual } from "../residual.js";
import { factor } from "./factor.js";
import { inverseAmong } from "./inverse-among.js";
import { selectedInverse } from "./selected-inverse.js";
import { solve } from "./solve.js";
import { residualOf, solveChecked } from "./solve-checked.js";
import { denseInverse, inverseColumns, solveMany } from "./solve-many.js";
import { reach, solveSparse, solveSparseAt } from "./solve-sparse.js";
import { analyse } from "./symbolic.js";

function factored(net: TestNetwork) {
	const result = factor(analyse(net.n, net.pattern.colPtr, net.pattern.rowIdx), net.values, net.rowSums);
	if (!result.ok) throw new Error(result.reason);
	return result.numeric;
}

describe("solveMany", () => {
	it("gives each right-hand side the bits it gets alone", () => {
		fc.assert(
			fc.property(loaded(networks(1e-2, 1e4)), fc.integer({ min: 0, max: 9 }), ({ net, b }, count) => {
				const numeric = factored(net);
				const columns = {
					ptr: Int32Array.from({ length: count + 1 }, (_, r) => r * net.n),
					idx: Int32Array.from({ length: count * net.n }, (_, k) => k % net.n),
					values: Float64Array.from({ length: count * net.n }, (_, k) => {
						const r = Math.floor(k / net.n);
						return b[k % net.n] * (r + 1) - r;
					}),
				};
				const each = Array.from({ length: count }, (_, r) => {
					const [from, to] = [columns.ptr[r], columns.ptr[r + 1]];
					return solveSparse(numeric, columns.idx.subarray(from, to), columns.values.subarray(from, to));
				});
				const all = solveMany(numeric, columns);
				for (let i = 0; i < net.n; i++)
					for (let r = 0; r < count; r++)
						expect(all[numeric.symbolic.inverse[i] * count + r]).toBe(each[r][i]);
			}),
			runs(100),
		);
	});
});

describe("solveSparse", () => {
	const problem = networks(1e-2, 1e4).chain((net) =>
		fc.record({
			net: fc.constant(net),
			at: fc.array(fc.nat(net.n - 1), { maxLength: 4 }),
			wanted: fc.array(fc.nat(net.n - 1), { maxLength: 4 }),
		}),
	);

	it("agrees with the full solve, at all nodes and at the wanted ones", () => {
		fc.assert(
			fc.property(problem, ({ net, at, wanted }) => {
				const numeric = factored(net);
				const values = at.map((_, q) => q - 1.5);
				const b = new Float64Array(net.n);
				at.forEach((i, q) => {
					b[i] += values[q];
				});
				const full = solve(numeric, b);
				// with currents of both signs potentials cancel; what is judged against is the potential of their sizes
				const size = Math.max(
					...solve(
						numeric,
						b.map((_, i) => (at.includes(i) ? 6 : 0)),
					),
					1e-300,
				);
				solveSparse(numeric, at, values).forEach((v, i) => {
					expect(Math.abs(v - full[i])).toBeLessThan(1e-12 * size);
				});
				const some = solveSparseAt(numeric, at, values, wanted);
				wanted.forEach((i, q) => {
					expect(Math.abs(some[q] - full[i])).toBeLessThan(1e-12 * size);
				});
				// the workspace is left clean for the next caller
				expect(numeric.work.every((v) => v === 0)).toBe(true);
			}),
			runs(200),
		);
	});

	it("reaches exactly the given nodes and their ancestors, children first", () => {
		fc.assert(
			fc.property(problem, ({ net, at }) => {
				const numeric = factored(net);
				const { parent, inverse } = numeric.symbolic;
				const expected = new Set<number>();
				for (const i of at) for (let j = inverse[i]; j !== -1; j = parent[j]) expected.add(j);
				const found = reach(numeric, at);
				expect(new Set(found)).toEqual(expected);
				expect(found).toHaveLength(expected.size);
				const place = new Map(found.map((j, r) => [j, r]));
				for (const j of found)
					if (parent[j] !== -1) expect(place.get(parent[j])).toBeGreaterThan(place.get(j)!);
			}),
			runs(100),
		);
	});

	it("names a node outside the network", () => {
		const net = fc.sample(networks(1, 1), { numRuns: 1, seed: 3 })[0];
		expect(() => solveSparse(factored(net), [net.n], [1])).toThrow(
			`node ${net.n} is outside 0..${net.n - 1}`,
		);
		expect(() => solveSparseAt(factored(net), [0], [1], [-1])).toThrow("node -1 is outside");
	});
});

describe("selectedInverse", () => {
	it("has the entries of the inverse on every entry of A, and says NaN elsewhere", () => {
		fc.assert(
			fc.property(networks(1e-4, 1e7, 25), (net) => {
				const numeric = factored(net);
				const z = selectedInverse(numeric);
				const full = denseInverse(numeric);
				let inside = 0;
				for (let i = 0; i < net.n; i++) {
					for (let j = 0; j < net.n; j++) {
						const v = z.at(i, j);
						if (Number.isNaN(v)) continue;
						inside++;
						// relative to the entry itself: nothing cancels on the subtraction-free path
						expect(Math.abs(v - full[j * net.n + i])).toBeLessThanOrEqual(1e-13 * full[j * net.n + i]);
					}
					expect(z.diagonal[i]).toBe(z.at(i, i));
				}
				expect(inside).toBe(net.n + 2 * numeric.lower.length);
				for (let e = 0; e < net.from.length; e++) {
					if (net.to[e] >= 0) expect(z.at(net.from[e], net.to[e])).not.toBeNaN();
				}
			}),
			runs(100),
		);
	});

	it("obeys Foster's theorem: sum over edges of R_eff / R = nodes - 1", () => {
		// R. M. Foster, "The average impedance of an electrical network" (1949); the reference is one of the nodes
		fc.assert(
			fc.property(networks(1e-1, 1e2), (net) => {
				const z = selectedInverse(factored(net));
				let sum = 0;
				for (let e = 0; e < net.from.length; e++) {
					const u = net.from[e];
					const v = net.to[e];
					const across = v < 0 ? z.at(u, u) : z.at(u, u) + z.at(v, v) - 2 * z.at(u, v);
					sum += net.siemens[e] * across;
				}
				expect(sum).toBeCloseTo(net.n, 9);
			}),
			runs(200),
		);
	});

	it("refuses an index outside the network", () => {
		const net = fc.sample(networks(1, 1), { numRuns: 1, seed: 3 })[0];
		expect(() => selectedInverse(factored(net)).at(0, net.n)).toThrow("is outside");
	});
});

describe("inverseColumns", () => {
	it("returns the columns asked for, whichever and in whatever order", () => {
		fc.assert(
			fc.property(networks(1e-2, 1e4), fc.array(fc.nat(1e6), { maxLength: 7 }), (net, picks) => {
				const numeric = factored(net);
				const indices = picks.map((p) => p % net.n);
				const columns = inverseColumns(numeric, indices);
				indices.forEach((i, c) => {
					expect(columns.slice(c * net.n, (c + 1) * net.n)).toEqual(solveSparse(numeric, [i], [1]));
				});
			}),
			runs(60),
		);
	});
});

describe("inverseAmong", () => {
	it("has the entries of the whole inverse, whichever nodes are asked, in whatever order and number", () => {
		fc.assert(
			fc.property(networks(1e-2, 1e4), fc.array(fc.nat(1e6), { maxLength: 150 }), (net, picks) => {
				const numeric = factored(net);
				const nodes = picks.map((p) => p % net.n);
				const full = denseInverse(numeric);
				const among = inverseAmong(numeric, nodes);
				const expected = nodes.flatMap((i) => nodes.map((j) => full[j * net.n + i]));
				expect([...among]).toEqual(expected);
				expect(() => inverseAmong(numeric, [...nodes, net.n])).toThrow(RangeError);
			}),
			runs(60),
		);
	});
});

describe("solveChecked", () => {
	it("meets the tolerance on networks of 1e-4 to 1e7 ohm without refinement", () => {
		fc.assert(
			fc.property(loaded(networks(1e-4, 1e7)), ({ net, b }) => {
				const answer = solveChecked(factored(net), b);
				expect(answer.ok).toBe(true);
				expect(answer.residual).toBeLessThanOrEqual(RESIDUAL_TOLERANCE);
				expect(answer.steps).toBe(0);
			}),
			runs(300),
		);
	});

	it("sees an error of one part in 1e9 in a single potential", () => {
		fc.assert(
			fc.property(networks(1e-4, 1e7), fc.nat(), (net, p) => {
				const numeric = factored(net);
				const b = new Float64Array(net.n).fill(1);
				const x = solve(numeric, b.slice());
				x[p % net.n] *= 1 + 1e-9;
				expect(scaledResidual(residualOf(numeric, x, b), x, b)).toBeGreaterThan(RESIDUAL_TOLERANCE);
			}),
			runs(200),
		);
	});

	it("refines a factor of slightly different values back to tolerance, or says it could not", () => {
		fc.assert(
			fc.property(
				loaded(networks(1e-1, 1e2)),
				fc.double({ min: 1e-9, max: 1e-4, noNaN: true }),
				({ net, b }, t) => {
					const numeric = factored(net);
					for (let k = 0; k < net.n; k++) numeric.pivots[k] *= 1 + t * Math.sin(k); // a spoiled factor
					const answer = solveChecked(numeric, b, 10);
					expect(answer.ok).toBe(answer.residual <= RESIDUAL_TOLERANCE);
					expect(answer.ok).toBe(true);
				},
			),
			runs(100),
		);
	});

	it("is not ok when the factor is far off", () => {
		const net = fc.sample(networks(1, 10, 20), { numRuns: 1, seed: 5 })[0];
		const numeric = factored(net);
		numeric.pivots.fill(1e-3);
		expect(solveChecked(numeric, new Float64Array(net.n).fill(1)).ok).toBe(false);
	});
});

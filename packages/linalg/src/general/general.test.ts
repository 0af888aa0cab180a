import fc from "fast-check";
import { LuDecomposition, Matrix } from "ml-matrix";
import { describe, expect, it } from "vitest";
import { normDifference, runs } from "../random-network.test-helper.js";
import { RESIDUAL_TOLERANCE } from "../residual.js";
import { factorGeneral } from "./factor.js";
import { solveGeneral, solveGeneralChecked, solveTransposed } from "./solve.js";
import { analyseGeneral } from "./symbolic.js";

const ints = (...v: number[]) => Int32Array.from(v);
const reals = (...v: number[]) => Float64Array.from(v);

/** Unsymmetric, sparse, signs mixed, zeros on the diagonal allowed; entries over twelve orders of magnitude. */
const systems = fc.integer({ min: 1, max: 30 }).chain((n) =>
	fc
		.record({
			entries: fc.array(
				fc.record({
					i: fc.nat(n - 1),
					j: fc.nat(n - 1),
					e: fc.double({ min: -6, max: 6, noNaN: true }),
					minus: fc.boolean(),
				}),
				{ minLength: n, maxLength: 4 * n },
			),
			shift: fc.nat(n - 1), // a shifted diagonal keeps the matrix structurally non-singular
			b: fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: n, maxLength: n }),
		})
		.map(({ entries, shift, b }) => {
			const a = Matrix.zeros(n, n);
			for (let j = 0; j < n; j++) a.set((j + shift) % n, j, 1 + j / n);
			for (const { i, j, e, minus } of entries) a.set(i, j, (minus ? -1 : 1) * 10 ** e);
			const ptr = [0];
			const rows: number[] = [];
			const values: number[] = [];
			for (let j = 0; j < n; j++) {
				for (let i = 0; i < n; i++) {
					if (a.get(i, j) === 0) continue;
					rows.push(i);
					values.push(a.get(i, j));
				}
				ptr.push(rows.length);
			}
			return {
				n,
				a,
				ptr: Int32Array.from(ptr),
				rows: Int32Array.from(rows),
				values: reals(...values),
				b: reals(...b.map((v) => (Math.abs(v) < 1e-12 ? 0 : v))),
			};
		}),
);

const inverseNorm = (a: Matrix) => {
	const lu = new LuDecomposition(a);
	if (lu.isSingular()) return Number.POSITIVE_INFINITY;
	const inverse = lu.solve(Matrix.eye(a.rows));
	return Math.max(...inverse.to2DArray().map((row) => row.reduce((sum, v) => sum + Math.abs(v), 0)));
};

describe("general path", () => {
	it.each([0.001, 0.1, 1])(
		"agrees with ml-matrix as far as the condition allows, threshold %d",
		(threshold) => {
			fc.assert(
				fc.property(systems, ({ n, a, ptr, rows, values, b }) => {
					const largest = Math.max(...values.map(Math.abs));
					const kappa = n * largest * inverseNorm(a);
					fc.pre(kappa < 1e9);
					const result = factorGeneral(analyseGeneral(n, ptr, rows), values, threshold);
					if (!result.ok) throw new Error(`singular at ${result.column}`);
					const column = Matrix.columnVector(Array.from(b));
					const x = reals(...new LuDecomposition(a).solve(column).to1DArray());
					const y = reals(...new LuDecomposition(a.transpose()).solve(column).to1DArray());
					const allowed = 1e-9 + 100 * Number.EPSILON * kappa;
					expect(normDifference(solveGeneral(result.numeric, b.slice()), x)).toBeLessThan(allowed);
					expect(normDifference(solveTransposed(result.numeric, b.slice()), y)).toBeLessThan(allowed);
				}),
				runs(300),
			);
		},
	);

	it("meets the residual tolerance, transposed or not", () => {
		fc.assert(
			fc.property(systems, fc.boolean(), ({ n, a, ptr, rows, values, b }, transposed) => {
				fc.pre(Math.max(...values.map(Math.abs)) * inverseNorm(a) < 1e12);
				const result = factorGeneral(analyseGeneral(n, ptr, rows), values);
				if (!result.ok) throw new Error(`singular at ${result.column}`);
				const answer = solveGeneralChecked(result.numeric, b, transposed);
				expect(answer.residual).toBeLessThanOrEqual(RESIDUAL_TOLERANCE);
				expect(answer.ok).toBe(true);
			}),
			runs(300),
		);
	});

	it("pairs the two solves: y . (A^-1 b) = (A^-T y) . b", () => {
		fc.assert(
			fc.property(systems, ({ n, a, ptr, rows, values, b }) => {
				fc.pre(Math.max(...values.map(Math.abs)) * inverseNorm(a) < 1e6);
				const result = factorGeneral(analyseGeneral(n, ptr, rows), values);
				if (!result.ok) throw new Error("singular");
				const y = b.map((_, i) => Math.cos(i));
				const x = solveGeneral(result.numeric, b.slice());
				const z = solveTransposed(result.numeric, y.slice());
				const dot = (u: Float64Array, v: Float64Array) => u.reduce((sum, t, i) => sum + t * v[i], 0);
				const size = dot(y.map(Math.abs), x.map(Math.abs)) + dot(z.map(Math.abs), b.map(Math.abs));
				expect(Math.abs(dot(y, x) - dot(z, b))).toBeLessThanOrEqual(1e-9 * size);
			}),
			runs(200),
		);
	});

	it("solves a controlled source by hand, pivoting off a zero diagonal", () => {
		// 1 ohm to the reference at node 0, source current into node 1 row: [1 1; 1 0] x = [3; 2] gives x = (2, 1)
		const result = factorGeneral(analyseGeneral(2, ints(0, 2, 3), ints(0, 1, 0)), reals(1, 1, 1));
		if (!result.ok) throw new Error("singular");
		expect([...solveGeneral(result.numeric, reals(3, 2))]).toEqual([2, 1]);
	});

	it("names the column where the matrix is singular", () => {
		const empty = factorGeneral(analyseGeneral(3, ints(0, 1, 1, 2), ints(0, 2)), reals(1, 1));
		expect(empty).toMatchObject({ ok: false, reason: "singular", column: 1 });
		// equal columns 0 and 1
		const equal = factorGeneral(analyseGeneral(2, ints(0, 2, 4), ints(0, 1, 0, 1)), reals(1, 2, 1, 2));
		expect(equal).toMatchObject({ ok: false, reason: "singular", step: 1 });
	});

	it("adds repeated entries", () => {
		const result = factorGeneral(analyseGeneral(1, ints(0, 2), ints(0, 0)), reals(1, 3));
		if (!result.ok) throw new Error("singular");
		expect(solveGeneral(result.numeric, reals(8))[0]).toBe(2);
	});

	it("refuses misuse by name", () => {
		const s = analyseGeneral(1, ints(0, 1), ints(0));
		expect(() => factorGeneral(s, reals())).toThrow("expected 1 values, got 0");
		expect(() => factorGeneral(s, reals(1), 0)).toThrow("threshold must be in (0, 1], got 0");
		expect(() => factorGeneral(s, reals(Number.POSITIVE_INFINITY))).toThrow("value 0 is Infinity");
		const result = factorGeneral(s, reals(1));
		if (result.ok)
			expect(() => solveGeneral(result.numeric, reals(1, 2))).toThrow("has 2 entries, expected 1");
	});
});

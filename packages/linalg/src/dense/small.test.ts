import fc from "fast-check";
import { LuDecomposition, Matrix } from "ml-matrix";
import { describe, expect, it } from "vitest";
import { normDifference, runs } from "../random-network.test-helper.js";
import { smallDense } from "./small.js";

const matrices = fc.integer({ min: 1, max: 8 }).chain((k) =>
	fc.record({
		k: fc.constant(k),
		s: fc
			.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: k * k, maxLength: k * k })
			.map((v) => Float64Array.from(v)),
	}),
);

const norm1 = (a: Matrix) =>
	Math.max(
		...a
			.transpose()
			.to2DArray()
			.map((column) => column.reduce((sum, v) => sum + Math.abs(v), 0)),
	);

describe("smallDense", () => {
	it("agrees with ml-matrix both ways round, and its condition estimate is within a factor of ten", () => {
		fc.assert(
			fc.property(matrices, ({ k, s }) => {
				const a = new Matrix(Array.from({ length: k }, (_, i) => Array.from(s.subarray(i * k, (i + 1) * k))));
				const lu = new LuDecomposition(a);
				fc.pre(!lu.isSingular());
				const inverse = lu.solve(Matrix.eye(k));
				const rcond = 1 / (norm1(a) * norm1(inverse));
				fc.pre(rcond > 1e-10);
				const f = smallDense(k, s);
				if (!f.ok) throw new Error(`singular at ${f.column}`);
				const b = Float64Array.from({ length: k }, (_, i) => i + 1);
				const column = Matrix.columnVector(Array.from(b));
				const tolerance = 1e-14 / rcond;
				expect(
					normDifference(f.solve(b.slice()), Float64Array.from(lu.solve(column).to1DArray())),
				).toBeLessThan(tolerance);
				const transposed = new LuDecomposition(a.transpose()).solve(column).to1DArray();
				expect(normDifference(f.solveTransposed(b.slice()), Float64Array.from(transposed))).toBeLessThan(
					tolerance,
				);
				expect(f.rcond).toBeGreaterThanOrEqual(rcond * (1 - 1e-6));
				expect(f.rcond).toBeLessThanOrEqual(10 * rcond);
			}),
			runs(500),
		);
	});

	it("names the column without a pivot", () => {
		expect(smallDense(2, Float64Array.of(1, 2, 2, 4))).toEqual({ ok: false, reason: "singular", column: 1 });
		expect(smallDense(2, Float64Array.of(0, 1, 0, 1))).toEqual({ ok: false, reason: "singular", column: 0 });
	});

	it("takes an empty system and refuses a wrong length", () => {
		expect(smallDense(0, new Float64Array(0)).ok).toBe(true);
		expect(() => smallDense(2, new Float64Array(3))).toThrow("matrix has 3 entries, expected 2 x 2");
	});

	it("keeps the matrix it was given", () => {
		const s = Float64Array.of(4, 3, 2, 1);
		smallDense(2, s);
		expect([...s]).toEqual([4, 3, 2, 1]);
	});
});

/** Random networks for the property tests, and the answers of an independent library. */
import fc from "fast-check";
import { LuDecomposition, Matrix } from "ml-matrix";
import { type NetworkPattern, networkPattern } from "./pattern.js";

export interface TestNetwork {
	readonly n: number;
	readonly from: number[];
	readonly to: number[];
	readonly siemens: number[];
	readonly pattern: NetworkPattern;
	readonly values: Float64Array;
	readonly rowSums: Float64Array;
}

/** Assembles a network; end -1 is the reference. */
export function assemble(n: number, from: number[], to: number[], siemens: number[]): TestNetwork {
	const pattern = networkPattern(n, from, to);
	const values = new Float64Array(pattern.rowIdx.length);
	const rowSums = new Float64Array(n);
	for (let e = 0; e < from.length; e++) {
		const u = from[e];
		const v = to[e];
		const g = siemens[e];
		if (u === v) continue;
		for (const i of [u, v]) if (i >= 0) values[pattern.diagonal[i]] += g;
		if (u < 0) rowSums[v] += g;
		else if (v < 0) rowSums[u] += g;
		else values[pattern.edge[e]] -= g;
	}
	return { n, from, to, siemens, pattern, values, rowSums };
}

/**
 * Connected networks: a random tree, extra edges (parallel ones included), one to three paths to the reference.
 * Resistances are log-uniform between the two bounds, in ohms.
 */
export function networks(lowOhms: number, highOhms: number, maxNodes = 40): fc.Arbitrary<TestNetwork> {
	const siemens = fc
		.double({ min: 0, max: 1, noNaN: true })
		.map((t) => 1 / (lowOhms * (highOhms / lowOhms) ** t));
	return fc.integer({ min: 1, max: maxNodes }).chain((n) =>
		fc
			.record({
				tree: fc.array(fc.record({ up: fc.nat(1e6), g: siemens }), { minLength: n - 1, maxLength: n - 1 }),
				extra: fc.array(fc.record({ u: fc.nat(n - 1), v: fc.nat(n - 1), g: siemens }), { maxLength: n }),
				ground: fc.array(fc.record({ u: fc.nat(n - 1), g: siemens }), { minLength: 1, maxLength: 3 }),
				hub: fc.boolean(),
			})
			.map(({ tree, extra, ground, hub }) => {
				const edges: [number, number, number][] = [
					...tree.map(({ up, g }, i): [number, number, number] => [
						i + 1,
						hub && up % 3 ? 0 : up % (i + 1),
						g,
					]),
					...extra.map(({ u, v, g }): [number, number, number] => [u, v, g]),
					...ground.map(({ u, g }): [number, number, number] => [u, -1, g]),
				].filter(([u, v]) => u !== v) as [number, number, number][];
				return assemble(
					n,
					edges.map(([u]) => u),
					edges.map(([, v]) => v),
					edges.map(([, , g]) => g),
				);
			}),
	);
}

/** Currents of either sign, some nodes left alone. */
export function currents(n: number): fc.Arbitrary<Float64Array> {
	return fc
		.array(fc.oneof(fc.constant(0), fc.double({ min: -10, max: 10, noNaN: true })), {
			minLength: n,
			maxLength: n,
		})
		.map((b) => Float64Array.from(b, (v) => (Math.abs(v) < 1e-6 ? 0 : v)));
}

/** A network and a right-hand side for it. */
export const loaded = (network: fc.Arbitrary<TestNetwork>) =>
	network.chain((net) => currents(net.n).map((b) => ({ net, b })));

/** The assembled matrix as a full ml-matrix one. */
export function fullMatrix({ n, pattern, values }: TestNetwork): Matrix {
	const a = Matrix.zeros(n, n);
	for (let j = 0; j < n; j++) {
		for (let s = pattern.colPtr[j]; s < pattern.colPtr[j + 1]; s++) {
			a.set(pattern.rowIdx[s], j, values[s]);
			a.set(j, pattern.rowIdx[s], values[s]);
		}
	}
	return a;
}

/** ml-matrix's dense LU with partial pivoting. */
export function mlSolve(a: Matrix, b: Float64Array): Float64Array {
	return Float64Array.from(new LuDecomposition(a).solve(Matrix.columnVector(Array.from(b))).to1DArray());
}

/** |A|_inf |A^-1|_inf, by ml-matrix. */
export function condition(a: Matrix): number {
	const inverse = new LuDecomposition(a).solve(Matrix.eye(a.rows));
	const norm = (m: Matrix) =>
		Math.max(...m.to2DArray().map((row) => row.reduce((sum, v) => sum + Math.abs(v), 0)));
	return norm(a) * norm(inverse);
}

/** max_i |x_i - y_i| / max_i |y_i|; the absolute difference where y is all zero. */
export function normDifference(x: Float64Array, y: Float64Array): number {
	let difference = 0;
	let size = 0;
	for (let i = 0; i < y.length; i++) {
		difference = Math.max(difference, Math.abs(x[i] - y[i]));
		size = Math.max(size, Math.abs(y[i]));
		if (Number.isNaN(x[i])) return Number.POSITIVE_INFINITY;
	}
	return size > 0 ? difference / size : difference;
}

/** Fixed seeds: a failure names its own counterexample. */
export const runs = (numRuns: number, seed = 20) => ({ numRuns, seed });

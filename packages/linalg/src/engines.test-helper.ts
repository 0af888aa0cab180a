/** The ways this package can solve a symmetric system, behind one interface. */
import { denseReference, type Engine, type Prepared } from "./dense/reference.js";
import { factorGeneral } from "./general/factor.js";
import { solveGeneral } from "./general/solve.js";
import { analyseGeneral } from "./general/symbolic.js";
import type { SymmetricPattern } from "./pattern.js";
import { type FactorResult, factor, refactor } from "./symmetric/factor.js";
import { refactorPart } from "./symmetric/refactor-part.js";
import { solve } from "./symmetric/solve.js";
import { inverseColumns, solveMany } from "./symmetric/solve-many.js";
import { solveSparse } from "./symmetric/solve-sparse.js";
import { analyse } from "./symmetric/symbolic.js";
import { edgeColumns, lowRankUpdate } from "./update/low-rank.js";

function symmetric(result: FactorResult, solver = solve): Prepared {
	if (!result.ok) return result;
	return { ok: true, solve: (b) => solver(result.numeric, b.slice()) };
}

const sparse: Engine = {
	name: "sparse",
	prepare: (p, values) => symmetric(factor(analyse(p.n, p.colPtr, p.rowIdx), values)),
};

const subtractionFree: Engine = {
	name: "sparse, subtraction-free",
	prepare: (p, values, rowSums) => symmetric(factor(analyse(p.n, p.colPtr, p.rowIdx), values, rowSums)),
};

const sparseRightHandSide: Engine = {
	name: "sparse right-hand side",
	prepare: (p, values, rowSums) =>
		symmetric(factor(analyse(p.n, p.colPtr, p.rowIdx), values, rowSums), (numeric, b) => {
			const indices = Array.from(b.keys()).filter((i) => b[i] !== 0);
			return solveSparse(
				numeric,
				indices,
				indices.map((i) => b[i]),
			);
		}),
};

const blocked: Engine = {
	name: "blocked right-hand sides",
	prepare: (p, values, rowSums) =>
		symmetric(factor(analyse(p.n, p.colPtr, p.rowIdx), values, rowSums), (numeric, b) => {
			const count = 6; // one whole block and a part of one
			const n = b.length;
			const all = solveMany(numeric, {
				ptr: Int32Array.from({ length: count + 1 }, (_, r) => r * n),
				idx: Int32Array.from({ length: count * n }, (_, k) => k % n),
				values: Float64Array.from({ length: count * n }, (_, k) => b[k % n] * (Math.floor(k / n) - 2.5)),
			});
			return b.map((_, i) => all[numeric.symbolic.inverse[i] * count + 5] / 2.5);
		}),
};

const general: Engine = {
	name: "general",
	prepare: (p, values) => {
		const full = bothTriangles(p, values);
		const result = factorGeneral(analyseGeneral(p.n, full.colPtr, full.rowIdx), full.values);
		if (!result.ok) return { ok: false, node: result.column };
		return { ok: true, solve: (b) => solveGeneral(result.numeric, b.slice()) };
	},
};

/** Factors a network in which up to two edges differ, then carries the difference as a low-rank change. */
const updated: Engine = {
	name: "low-rank update",
	prepare: (p, values, rowSums) => {
		const other = values.slice();
		const from: number[] = [];
		const to: number[] = [];
		const change: number[] = [];
		for (let j = 0; j < p.n && change.length < 2; j++) {
			for (let s = p.colPtr[j]; s < p.colPtr[j + 1] && change.length < 2; s++) {
				const i = p.rowIdx[s];
				if (i === j || values[s] === 0) continue;
				const c = change.length === 0 ? -values[s] * 0.75 : values[s] * 0.5; // what the update must bring back
				other[s] += c; // off-diagonal is -g
				for (const d of [i, j]) other[diagonalPlace(p, d)] -= c;
				from.push(i);
				to.push(j);
				change.push(c);
			}
		}
		const kept = factor(analyse(p.n, p.colPtr, p.rowIdx), other, rowSums);
		if (!kept.ok) return kept;
		const u = edgeColumns(from, to);
		const z = change.map((_, t) =>
			solveSparse(
				kept.numeric,
				u.idx.subarray(u.ptr[t], u.ptr[t + 1]),
				u.values.subarray(u.ptr[t], u.ptr[t + 1]),
			),
		);
		const update = lowRankUpdate((t) => z[t], u, Float64Array.from(change));
		if (!update.ok) return symmetric(factor(kept.numeric.symbolic, values, rowSums)); // as the guard says: refactor
		return { ok: true, solve: (b) => update.apply(solve(kept.numeric, b.slice())) };
	},
};

/** Factors a network in which one edge differs, then brings the factor up to date in place. */
const partial: Engine = {
	name: "partial refactorisation",
	prepare: (p, values, rowSums) => {
		const other = values.slice();
		const s = other.findIndex((v) => v < 0);
		if (s >= 0) other[s] *= 1e-3;
		const kept = factor(analyse(p.n, p.colPtr, p.rowIdx), other, rowSums);
		if (!kept.ok) return kept;
		return symmetric(
			s >= 0 ? refactorPart(kept.numeric, [s], [values[s]]) : refactor(kept.numeric, values, rowSums),
		);
	},
};

/** Solves by multiplying with the columns of the inverse. */
const inverse: Engine = {
	name: "inverse columns",
	prepare: (p, values, rowSums) => {
		const result = factor(analyse(p.n, p.colPtr, p.rowIdx), values, rowSums);
		if (!result.ok) return result;
		const columns = inverseColumns(
			result.numeric,
			Array.from({ length: p.n }, (_, i) => i),
		);
		return {
			ok: true,
			solve: (b) => b.map((_, i) => b.reduce((sum, v, c) => sum + columns[c * p.n + i] * v, 0)),
		};
	},
};

/** Every engine; `accurate` ones promise every entry right whatever the conditioning. */
export const engines: { engine: Engine; accurate: boolean }[] = [
	{ engine: denseReference, accurate: false },
	{ engine: sparse, accurate: false },
	{ engine: subtractionFree, accurate: true },
	{ engine: sparseRightHandSide, accurate: true },
	{ engine: blocked, accurate: true },
	{ engine: inverse, accurate: true },
	{ engine: partial, accurate: true },
	{ engine: general, accurate: false },
	{ engine: updated, accurate: false },
];

/** The full compressed-column form of a symmetric matrix. */
export function bothTriangles(
	{ n, colPtr, rowIdx }: SymmetricPattern,
	values: Float64Array,
): { colPtr: Int32Array; rowIdx: Int32Array; values: Float64Array } {
	const columns: [number, number][][] = Array.from({ length: n }, () => []);
	for (let j = 0; j < n; j++) {
		for (let s = colPtr[j]; s < colPtr[j + 1]; s++) {
			columns[j].push([rowIdx[s], values[s]]);
			if (rowIdx[s] !== j) columns[rowIdx[s]].push([j, values[s]]);
		}
	}
	const ptr = [0];
	for (const column of columns) ptr.push(ptr[ptr.length - 1] + column.length);
	return {
		colPtr: Int32Array.from(ptr),
		rowIdx: Int32Array.from(columns.flat(), ([i]) => i),
		values: Float64Array.from(columns.flat(), ([, v]) => v),
	};
}

function diagonalPlace({ colPtr, rowIdx }: SymmetricPattern, i: number): number {
	for (let s = colPtr[i]; s < colPtr[i + 1]; s++) if (rowIdx[s] === i) return s;
	throw new Error(`no diagonal entry ${i}`);
}

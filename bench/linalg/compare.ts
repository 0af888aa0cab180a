/**
 * Our sparse solver against KLU (C) and ml-matrix's dense LU, on given networks; all medians from one run.
 *
 * Each size is measured in rounds that alternate KLU and ours, so that a busy spell of the machine falls on both.
 * KLU's figure is the faster of its default settings and of those with row scaling and block form off. Ours is the
 * subtraction-free path, each factor in memory that the one before handed back, as klu_free_numeric does. Ordering is
 * apart on both sides, as it is done once per pattern; against ml-matrix it is counted in.
 */
import {
	analyse,
	factor,
	type Numeric,
	RESIDUAL_TOLERANCE,
	refactor,
	refactorPart,
	release,
	selectedInverse,
	solve,
	solveChecked,
} from "@loomwright/linalg";
import { LuDecomposition, Matrix } from "ml-matrix";
import type { Figure } from "../figure.js";
import { summarise, time } from "../measure.js";
import { compileKlu, type Klu, type KluMedians } from "./klu.js";
import { fullMatrix, type Network } from "./network-generator.js";

/** Efforts; the defaults are those of the published figures. */
export interface CompareOptions {
	readonly rounds?: number;
	/** Seconds for KLU in each round. */
	readonly seconds?: number;
	/** Takes a line about what was skipped. */
	readonly note?: (line: string) => void;
}

/**
 * Yields the figures of the comparison.
 * @param networks one for each size, made when its turn comes
 * @param dense number of the one that the dense library gets as well
 */
export async function* compare(
	networks: readonly (() => Network)[],
	dense: number,
	{ rounds = 5, seconds = 0.4, note = console.error }: CompareOptions = {},
): AsyncGenerator<Figure> {
	const klu = compileKlu();
	if ("missing" in klu) {
		note(`KLU comparison skipped: ${klu.missing}. With Debian: apt-get install -y gcc libsuitesparse-dev`);
	}
	try {
		const growth: [nodes: number, seconds: number][] = [];
		for (const make of networks) {
			const network = make();
			const measured = await measureSize(network, "missing" in klu ? null : klu, rounds, seconds);
			growth.push([network.n, measured.factorAndSolve]);
			yield* measured.figures;
		}
		if (growth.length > 1) {
			yield {
				figure: "growth exponent of factor + solve in nodes",
				value: slope(growth),
				unit: "",
				goal: { below: 1.3 },
			};
		}
	} finally {
		if (!("missing" in klu)) klu.close();
	}
	yield* await compareDense(networks[dense]!());
}

/** Current into every seventh node, as from so many loads. */
const load = (n: number): Float64Array => Float64Array.from({ length: n }, (_, i) => (i % 7 === 0 ? 1 : 0));

function must(result: ReturnType<typeof factor>): Numeric {
	if (!result.ok)
		throw new Error(`the generated network has no factor: ${result.reason}, node ${result.node}`);
	return result.numeric;
}

async function measureSize(network: Network, klu: Klu | null, rounds: number, seconds: number) {
	const { n, pattern, values, rowSums } = network;
	const b = load(n);
	const x = new Float64Array(n);
	const symbolic = analyse(n, pattern.colPtr, pattern.rowIdx);
	const numeric = must(factor(symbolic, values, rowSums));
	const edge = pattern.edge.find((s) => s >= 0) as number;
	const runs = n > 5000 ? 25 : 100;
	const ours: Record<string, number[]> = {};
	const theirs: KluMedians[] = [];
	const take = async (name: string, work: () => unknown, inner = n > 5000 ? 1 : 10) => {
		// the engine compiles the loops in stages, over some two thousand calls
		const warmUp = name in ours ? 5 : Math.ceil(2000 / inner / (n > 5000 ? 10 : 1));
		const { median } = await time(work, { runs, warmUp, inner });
		ours[name] = [...(ours[name] ?? []), median];
	};
	for (let round = 0; round < rounds; round++) {
		if (klu) theirs.push(klu.measure(network, b, seconds));
		await take("factor + solve", () => {
			x.set(b);
			const own = must(factor(symbolic, values, rowSums));
			solve(own, x);
			// As KLU frees what it took.
			release(own);
			return x;
		});
		await take("refactor", () => must(refactor(numeric, values, rowSums)));
		await take("solve", () => {
			x.set(b);
			return solve(numeric, x);
		});
		await take("analyse", () => analyse(n, pattern.colPtr, pattern.rowIdx));
		await take(
			"refactor for one changed wire",
			() => refactorPart(numeric, [edge], [values[edge] as number]),
			20,
		);
		await take("selected inverse", () => selectedInverse(numeric));
	}
	const figures: Figure[] = [];
	const nodes = `${n} nodes`;
	const pairs: Record<string, (m: KluMedians) => number> = {
		"factor + solve": (m) => Math.min(m.factorAndSolve, m.leanFactorAndSolve),
		refactor: (m) => Math.min(m.refactor, m.leanRefactor),
		solve: (m) => Math.min(m.solve, m.leanSolve),
		analyse: (m) => Math.min(m.analyze, m.leanAnalyze),
	};
	for (const [name, all] of Object.entries(ours)) {
		const mine = summarise(all);
		figures.push({ figure: `${nodes}: ${name}`, value: mine.median, unit: "s", spread: mine.spread });
		const pick = pairs[name];
		if (theirs.length === 0 || pick === undefined) continue;
		const ratio = summarise(all.map((t, round) => t / pick(theirs[round] as KluMedians)));
		figures.push({
			figure: `${nodes}: ${name}, times KLU's`,
			value: mine.median / summarise(theirs.map(pick)).median,
			unit: "",
			goal: name === "factor + solve" ? { atMost: 2 } : undefined,
			spread: ratio.spread,
		});
	}
	figures.push({
		figure: `${nodes}: scaled residual`,
		value: solveChecked(numeric, b, 0).residual,
		unit: "",
		goal: { atMost: RESIDUAL_TOLERANCE },
	});
	return { figures, factorAndSolve: summarise(ours["factor + solve"] as number[]).median };
}

async function compareDense(network: Network): Promise<Figure[]> {
	const { n, pattern, values, rowSums } = network;
	const b = load(n);
	const sparse = await time(
		() => solve(must(factor(analyse(n, pattern.colPtr, pattern.rowIdx), values, rowSums)), b.slice()),
		{ runs: 50, warmUp: 20 },
	);
	const a = denseMatrix(network);
	const right = Matrix.columnVector(Array.from(b));
	const dense = await time(
		() => new LuDecomposition(a).solve(right),
		n > 500 ? { runs: 1, warmUp: 0 } : { runs: 5 },
	);
	return [
		{
			figure: `${n} nodes: analyse + factor + solve`,
			value: sparse.median,
			unit: "s",
			spread: sparse.spread,
		},
		{ figure: `${n} nodes: dense LU of ml-matrix`, value: dense.median, unit: "s", spread: dense.spread },
		{
			figure: `${n} nodes: times faster than dense LU of ml-matrix`,
			value: dense.median / sparse.median,
			unit: "",
			goal: { atLeast: 100 },
			spread: [dense.spread[0] / sparse.spread[1], dense.spread[1] / sparse.spread[0]],
		},
	];
}

function denseMatrix(network: Network): Matrix {
	const { colPtr, rowIdx, values } = fullMatrix(network);
	const a = Matrix.zeros(network.n, network.n);
	for (let j = 0; j < network.n; j++) {
		for (let p = colPtr[j] as number; p < (colPtr[j + 1] as number); p++) {
			a.set(rowIdx[p] as number, j, values[p] as number);
		}
	}
	return a;
}

/** Least-squares slope of log seconds over log nodes. */
export function slope(points: readonly (readonly [nodes: number, seconds: number])[]): number {
	const xs = points.map(([n]) => Math.log(n));
	const ys = points.map(([, t]) => Math.log(t));
	const mean = (v: number[]) => v.reduce((sum, e) => sum + e, 0) / v.length;
	const [mx, my] = [mean(xs), mean(ys)];
	const top = xs.reduce((sum, x, i) => sum + (x - mx) * ((ys[i] as number) - my), 0);
	return top / xs.reduce((sum, x) => sum + (x - mx) ** 2, 0);
}

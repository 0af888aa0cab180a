/**
 * A lower bound on the size of any cover, and prices of the rows.
 *
 * For any prices u >= 0, L(u) = sum u_r + sum_c min(0, 1 - sum of u over the rows of c) is at most the least size of
 * a cover: the Lagrangian of the rows, here climbed by subgradient steps.
 * J. E. Beasley, 'A Lagrangian heuristic for set-covering problems', Naval Research Logistics 37, 1990.
 */
import { type CoverProblem, rowsOfColumns } from "./problem.js";

export interface Bound {
	/** Not rounded up. */
	readonly value: number;
	readonly prices: Float64Array;
}

/** Steps of the climb, and after how many without gain they are halved. */
const STEPS = 600;
const PATIENCE = 20;

/** @param best size of a known cover; every row must have a column */
export function lagrangianBound(problem: CoverProblem, best: number): Bound {
	const { rows } = problem;
	const covers = rowsOfColumns(problem);
	let prices = Float64Array.from(rows, (row) => 1 / Math.max(...row.map((column) => covers[column]!.length)));
	let top: Bound = { value: Number.NEGATIVE_INFINITY, prices };
	let step = 1;
	let idle = 0;
	for (let k = 0; k < STEPS && step > 1e-3; k++) {
		let value = 0;
		const slack = new Float64Array(rows.length).fill(1);
		for (const price of prices) value += price;
		for (const own of covers) {
			let cost = 1;
			for (const r of own) cost -= prices[r]!;
			if (cost >= 0) continue;
			value += cost;
			for (const r of own) slack[r]! -= 1;
		}
		if (value > top.value + 1e-6) {
			top = { value, prices };
			idle = 0;
		} else if (++idle === PATIENCE) {
			idle = 0;
			step /= 2;
		}
		if (Math.ceil(top.value - 1e-6) >= best) break;
		let norm = 0;
		for (const s of slack) norm += s * s;
		if (norm === 0) break;
		const length = (step * Math.max(1.02 * best - value, 0.05)) / norm;
		prices = prices.map((price, r) => Math.max(0, price + length * slack[r]!));
	}
	return top;
}

/** Integer programs solved by HiGHS, compiled to WebAssembly and loaded once. */
import type { Program, Solved, Solver } from "@loomwright/engine";
import loadHighs, { type Highs } from "highs";

// Its types describe the CommonJS build, in which the function is a property; here the module's default is the function.
const load = loadHighs as unknown as typeof loadHighs.default;
let loading: Promise<Highs> | undefined;

/** @returns a solver that proves its answers: it stops when the gap is nothing, or after `seconds`, with the bound it has then */
export async function highsSolver(seconds = 60): Promise<Solver> {
	loading ??= load();
	const highs = await loading;
	return (program) => solve(highs, program, seconds);
}

/**
 * To the end, and without looking for good answers on the side: on programs of this size that takes longer than
 * the proof itself (measured on the demo car: 4 s with, 2 s without).
 */
const PROVING = {
	output_flag: false,
	mip_rel_gap: 0,
	mip_abs_gap: 1e-6,
	mip_heuristic_effort: 0,
	mip_heuristic_run_feasibility_jump: false,
	mip_heuristic_run_rins: false,
	mip_heuristic_run_rens: false,
	mip_heuristic_run_root_reduced_cost: false,
};

function solve(highs: Highs, { costs, upper, rows }: Program, seconds: number): Solved {
	const { infinity } = highs;
	const starts = [0];
	const indices: number[] = [];
	const values: number[] = [];
	for (const { terms } of rows) {
		for (const [column, coefficient] of terms) {
			indices.push(column);
			values.push(coefficient);
		}
		starts.push(indices.length);
	}
	const model = {
		numCols: costs.length,
		numRows: rows.length,
		colCost: costs,
		colLower: costs.map(() => 0),
		colUpper: upper,
		rowLower: rows.map(({ low }) => low ?? -infinity),
		rowUpper: rows.map(({ high }) => high ?? infinity),
		matrix: { format: "csr", numRows: rows.length, numCols: costs.length, starts, indices, values } as const,
		integrality: costs.map(() => highs.constants.variableType.integer),
	};
	return highs.withModel(model, (solver) => {
		solver.options.set({ ...PROVING, time_limit: seconds });
		solver.run();
		const { colValue } = solver.getSolution();
		const objective = solver.getObjectiveValue();
		const found = Number.isFinite(objective) && colValue.length === costs.length && keeps(rows, colValue);
		if (!found) return { values: [], objective: Number.POSITIVE_INFINITY, bound: Number.POSITIVE_INFINITY };
		const bound = Number(solver.info.get("mip_dual_bound"));
		return { values: [...colValue], objective, bound: Math.min(objective, bound) };
	});
}

/** HiGHS gives a point also where there is no answer; only one that keeps every row counts. */
function keeps(rows: Program["rows"], values: ArrayLike<number>): boolean {
	return rows.every(({ terms, low, high }) => {
		const sum = terms.reduce((total, [column, coefficient]) => total + coefficient * values[column]!, 0);
		return sum >= (low ?? sum) - 1e-6 && sum <= (high ?? sum) + 1e-6;
	});
}

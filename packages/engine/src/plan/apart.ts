/**
 * A program solved in the pieces that share no row: the same answer, and a piece that was solved before is not
 * solved again. What is held at 0 or 1 parts the circuits of a car into small groups.
 */
import type { Program, ProgramRow, Solved, Solver } from "./program.js";

/** @param solver of single pieces; what it answered is remembered as long as the returned solver */
export function inPieces(solver: Solver): Solver {
	const known = new Map<string, Solved>();
	return (program) => {
		const fixed = fixedColumns(program);
		const rows = program.rows.map((row) => reduced(row, fixed));
		if (
			rows.some(
				({ terms, low, high }) => terms.length === 0 && (0 < (low ?? 0) - EPS || 0 > (high ?? 0) + EPS),
			)
		)
			return NONE;
		const values = program.costs.map((_, k) => fixed.get(k) ?? 0);
		let objective = values.reduce((sum, value, k) => sum + value * program.costs[k]!, 0);
		let bound = objective;
		for (const { columns, rows: own } of pieces(program, rows, fixed)) {
			const index = new Map(columns.map((k, at) => [k, at]));
			const piece: Program = {
				costs: columns.map((k) => program.costs[k]!),
				upper: columns.map((k) => program.upper[k]!),
				rows: own.map((row) => ({ ...row, terms: row.terms.map(([k, c]) => [index.get(k)!, c] as const) })),
			};
			const key = JSON.stringify(piece);
			const solved = known.get(key) ?? solver(piece);
			known.set(key, solved);
			if (solved.values.length === 0) return NONE;
			columns.forEach((k, at) => {
				values[k] = solved.values[at]!;
			});
			objective += solved.objective;
			bound += solved.bound;
		}
		return { values, objective, bound };
	};
}

const NONE: Solved = { values: [], objective: Number.POSITIVE_INFINITY, bound: Number.POSITIVE_INFINITY };
const EPS = 1e-9;

/** Columns that can only be 0, and those that a row of their own holds at 1. */
function fixedColumns({ upper, rows }: Program): Map<number, number> {
	const fixed = new Map<number, number>();
	upper.forEach((most, k) => {
		if (most === 0) fixed.set(k, 0);
	});
	for (const { terms, low } of rows) {
		const [only] = terms;
		if (terms.length === 1 && only?.[1] === 1 && low === 1 && !fixed.has(only[0])) fixed.set(only[0], 1);
	}
	return fixed;
}

function reduced({ terms, low, high }: ProgramRow, fixed: ReadonlyMap<number, number>): ProgramRow {
	const constant = terms.reduce((sum, [k, c]) => sum + c * (fixed.get(k) ?? 0), 0);
	return {
		terms: terms.filter(([k]) => !fixed.has(k)),
		low: low === undefined ? undefined : low - constant,
		high: high === undefined ? undefined : high - constant,
	};
}

/** Free columns that rows tie together, with those rows; rows that hold whatever their columns are say nothing. */
function pieces(
	{ costs }: Program,
	rows: readonly ProgramRow[],
	fixed: ReadonlyMap<number, number>,
): { columns: number[]; rows: ProgramRow[] }[] {
	const parent = costs.map((_, k) => k);
	const root = (k: number): number => {
		let at = k;
		while (parent[at] !== at) at = parent[at]!;
		parent[k] = at;
		return at;
	};
	const binding = rows.filter(binds);
	for (const { terms } of binding) for (const [k] of terms) parent[root(k)] = root(terms[0]![0]);
	const found = new Map<number, { columns: number[]; rows: ProgramRow[] }>();
	costs.forEach((_, k) => {
		if (fixed.has(k)) return;
		const piece = found.get(root(k)) ?? { columns: [], rows: [] };
		piece.columns.push(k);
		found.set(root(k), piece);
	});
	for (const row of binding) found.get(root(row.terms[0]![0]))!.rows.push(row);
	return [...found.values()];
}

function binds({ terms, low, high }: ProgramRow): boolean {
	const least = terms.reduce((sum, [, c]) => sum + Math.min(0, c), 0);
	const most = terms.reduce((sum, [, c]) => sum + Math.max(0, c), 0);
	return (
		terms.length > 0 &&
		((low !== undefined && low > least + EPS) || (high !== undefined && high < most - EPS))
	);
}

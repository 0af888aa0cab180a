/** A cover of the same size that needs fewer trips: readings exchanged for ones between places already visited. */
import { type CoverProblem, rowsOfColumns } from "./cover/problem.js";

/** Rounds; each goes once through all chosen readings. */
const ROUNDS = 4;

/** @param groupOf readings of one group are taken without a step */
export function convenient(
	problem: CoverProblem,
	chosen: readonly number[],
	groupOf: (column: number) => string,
): number[] {
	const covers = rowsOfColumns(problem);
	const times = new Int32Array(problem.rows.length);
	const size = new Map<string, number>();
	const count = (column: number, by: 1 | -1) => {
		size.set(groupOf(column), (size.get(groupOf(column)) ?? 0) + by);
		for (const r of covers[column]!) times[r]! += by;
	};
	const kept = new Set(chosen);
	for (const column of kept) count(column, 1);
	for (let round = 0; round < ROUNDS; round++) {
		let moved = false;
		const order = [...kept].sort((x, y) => size.get(groupOf(x))! - size.get(groupOf(y))! || x - y);
		for (const column of order) {
			const own = covers[column]!.filter((r) => times[r] === 1);
			const [first] = own;
			if (first === undefined) continue;
			const here = size.get(groupOf(column))!;
			let best = column;
			let most = here;
			for (const instead of problem.rows[first]!) {
				const there = size.get(groupOf(instead)) ?? 0;
				if (kept.has(instead) || groupOf(instead) === groupOf(column) || there < most) continue;
				const has = new Set(covers[instead]!);
				if (!own.every((r) => has.has(r))) continue;
				best = instead;
				most = there + 1;
			}
			if (best === column) continue;
			kept.delete(column);
			count(column, -1);
			kept.add(best);
			count(best, 1);
			moved = true;
		}
		if (!moved) break;
	}
	return [...kept].sort((x, y) => x - y);
}

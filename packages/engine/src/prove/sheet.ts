/** The prove sheet: the fewest readings before power that catch every fault which readings before power can catch. */
import type { Circuit } from "../circuit/index.js";
import { convenient } from "./convenient.js";
import { cover } from "./cover/cover.js";
import { missesOf } from "./misses.js";
import { askCar, type SheetQuestion } from "./question.js";
import { partsOf, placesOf } from "./rows.js";
import type { Candidate, Coverage, Provable, ProveSheet, SheetOptions } from "./types.js";
import { placeChanges } from "./walk.js";

/**
 * Computes the sheet of the converted car: ordered readings with the battery off that catch every single fault
 * which any offered reading catches (detect.ts states the rule), the ones it cannot catch with why, and a bound on
 * how few of the offered readings could do the same. Circuits of restraints and high voltage are never offered.
 *
 * @throws CircuitError when the sound network does not settle
 */
export function proveSheet(car: Provable, options: SheetOptions = {}): ProveSheet {
	const { leastOhms = 1, leastPrior = 0 } = options;
	const asked = askCar(car, { leastOhms, leastPrior });
	const { circuit, candidates, caughtBy } = asked;
	const problem = { rows: caughtBy.filter((list) => list.length > 0), columns: candidates.length };
	const solved = cover(problem, { rank: rankBy(circuit, candidates) });
	const group = (k: number) =>
		`${candidates[k]!.phase} ${placesOf(circuit, candidates[k]!).sort().join(" - ")}`;
	const chosen = convenient(problem, solved.chosen, group);
	const parts = partsOf(asked, chosen, catchesOf(asked, chosen));
	const rows = parts.flatMap((part) => part.rows);
	return {
		leastOhms,
		parts,
		readings: rows.length,
		lowerBound: solved.lowerBound,
		offered: candidates.length,
		coverage: coverageOf(asked, chosen),
		missed: missesOf(
			asked,
			chosen.map((k) => candidates[k]!),
		),
		placeChanges: placeChanges(rows.map((row) => [row.place, row.toPlace])),
	};
}

/** Of readings that catch the same: in an early phase, both points at one place, then in order of the offer. */
function rankBy(circuit: Circuit, candidates: readonly Candidate[]): (column: number) => number {
	const ranks = candidates.map((candidate, k) => {
		const [a, b] = placesOf(circuit, candidate);
		return candidate.phase * 2 + Number(a !== b) + k / candidates.length;
	});
	return (column) => ranks[column]!;
}

/** Ids of the faults that each chosen reading catches. */
function catchesOf(
	{ faults, ways, changeOf, caughtBy }: SheetQuestion,
	chosen: readonly number[],
): Map<number, Set<string>> {
	const catches = new Map(chosen.map((k) => [k, new Set<string>()]));
	ways.forEach(({ fault }, w) => {
		for (const k of caughtBy[changeOf[w]!]!) catches.get(k)?.add(faults[fault]!.id);
	});
	return catches;
}

/** A fault counts as caught where the sheet catches every way of it that some offered reading does. */
function coverageOf(
	{ faults, ways, changeOf, caughtBy }: SheetQuestion,
	chosen: readonly number[],
): Coverage {
	const onSheet = new Set(chosen);
	const detectable = new Set<number>();
	const missed = new Set<number>();
	ways.forEach(({ fault }, w) => {
		const by = caughtBy[changeOf[w]!]!;
		if (by.length === 0) return;
		detectable.add(fault);
		if (!by.some((k) => onSheet.has(k))) missed.add(fault);
	});
	return { faults: faults.length, detectable: detectable.size, caught: detectable.size - missed.size };
}

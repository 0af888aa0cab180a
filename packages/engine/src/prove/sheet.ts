/** The prove sheet: the fewest readings before power that catch every fault which readings before power can catch. */
import {
	type Change,
	type Circuit,
	Condensed,
	nodesNeeded,
	type Operating,
	operate,
	separated,
	settingsOf,
} from "../circuit/index.js";
import { placeOf } from "../faults/index.js";
import { pointOf, sensitivity } from "../readings/index.js";
import { offer } from "./candidates.js";
import { convenient } from "./convenient.js";
import { cover } from "./cover/cover.js";
import { DeadNet } from "./dead-net.js";
import { detect, LEAST_OPEN, limits } from "./detect.js";
import { faultsOf } from "./faults-of-car.js";
import { Misses, WHY } from "./misses.js";
import { phasesOf } from "./phases.js";
import type {
	Candidate,
	Miss,
	Phase,
	Provable,
	ProveSheet,
	SheetOptions,
	SheetPart,
	SheetRow,
} from "./types.js";
import { placeChanges, walk } from "./walk.js";
import { waysOf } from "./ways.js";
import { deadCautions, pointWords, sortKey } from "./words.js";

/** Ohms tried for poor connections that the sheet does not catch at the chosen size. */
const LADDER = [10, 100, 1000, 10_000] as const;

/**
 * Computes the sheet of the converted car: ordered readings with the battery off that catch every single fault
 * which any offered reading catches (detect.ts states the rule), the ones it cannot catch with why, and a bound on
 * how few readings could do the same. Contacts of restraint and high-voltage circuits are never offered.
 *
 * @throws CircuitError when the sound network does not settle
 */
export function proveSheet(car: Provable, options: SheetOptions = {}): ProveSheet {
	const leastOhms = options.leastOhms ?? 1;
	const { circuit, faults: all } = faultsOf(car);
	const faults = all.filter((fault) => fault.prior >= (options.leastPrior ?? 0));
	const ways = waysOf(circuit, faults, leastOhms);
	const known = phasesOf(circuit.loom);
	const { phases, candidates } = offer(circuit, known);
	const net = condensed(
		circuit,
		candidates,
		ways.map((way) => way.change),
	);
	const numbers = new Map<Change, number>();
	const wayChange = ways.map((way) => {
		const change = net.change(way.change);
		if (!numbers.has(change)) numbers.set(change, numbers.size);
		return numbers.get(change)!;
	});
	const changes = [...numbers.keys()];
	const { caughtBy, acts } = detect(net, candidates, changes);
	const problem = { rows: caughtBy.filter((list) => list.length > 0), columns: candidates.length };
	const groupOf = (k: number) => groupName(circuit, candidates[k]!);
	const solved = cover(problem, { rank: rankBy(circuit, candidates) });
	const chosen = convenient(problem, solved.chosen, groupOf);

	const onSheet = new Set(chosen);
	const sheetCatches = caughtBy.map((list) => list.some((k) => onSheet.has(k)));
	const state = faults.map(() => ({ detectable: false, missed: false, lost: [] as number[] }));
	const catches = new Map<number, Set<string>>(chosen.map((k) => [k, new Set()]));
	ways.forEach((way, w) => {
		const change = wayChange[w]!;
		const own = state[way.fault]!;
		if (caughtBy[change]!.length === 0) own.lost.push(w);
		else {
			own.detectable = true;
			if (!sheetCatches[change]) own.missed = true;
		}
		for (const k of caughtBy[change]!) catches.get(k)?.add(faults[way.fault]!.id);
	});
	const parts = partsOf(circuit, phases, candidates, chosen, catches);
	const misses = new Misses(circuit, new DeadNet(net, known.plugged.when));
	const openCaught = (change: Change) => {
		const [one] = change.branches;
		const open = one && net.change({ branches: [{ branch: one.branch, siemens: 0 }], added: [] });
		return open !== undefined && (caughtBy[numbers.get(open) ?? -1]?.length ?? 0) > 0;
	};
	const from = caughtFrom(
		net,
		chosen.map((k) => candidates[k]!),
		ways.flatMap((way, w) =>
			caughtBy[wayChange[w]!]!.length === 0 && openCaught(way.change) ? [way.change] : [],
		),
	);
	const missed = faults.flatMap((fault, f): Miss[] => {
		const { lost, detectable } = state[f]!;
		const [first] = lost;
		if (first === undefined) return [];
		const { change } = ways[first]!;
		const number = wayChange[first]!;
		const reason = misses.reason({
			fault,
			change,
			condensed: changes[number]!,
			acts: acts[number] === 1,
			openCaught: openCaught(change),
		});
		return [
			{
				id: fault.id,
				kind: fault.kind,
				where: fault.where,
				reason,
				why: WHY[reason],
				only: detectable ? lost.map((w) => ways[w]!.at) : [],
				caughtFrom: from.get(change),
			},
		];
	});
	const rows = parts.flatMap((part) => part.rows);
	return {
		leastOhms,
		parts,
		readings: rows.length,
		lowerBound: solved.lowerBound,
		offered: candidates.length,
		coverage: {
			faults: faults.length,
			detectable: state.filter((s) => s.detectable).length,
			caught: state.filter((s) => s.detectable && !s.missed).length,
		},
		missed,
		placeChanges: placeChanges(rows.map((row) => [row.place, row.toPlace])),
	};
}

/** The circuit with its runs taken together, all points that are asked about kept. */
function condensed(
	circuit: Circuit,
	candidates: readonly Candidate[],
	changes: readonly Change[],
): Condensed {
	const keep = new Set(changes.flatMap((change) => nodesNeeded(circuit, change)));
	for (const { from, to } of candidates) for (const id of [from, to]) keep.add(pointOf(circuit, id));
	keep.delete(-1);
	return new Condensed(circuit, keep);
}

function places(circuit: Circuit, { from, to }: Candidate): [string, string] {
	return [placeOf(circuit.loom, from), placeOf(circuit.loom, to)];
}

function groupName(circuit: Circuit, candidate: Candidate): string {
	return `${candidate.phase} ${places(circuit, candidate).sort().join(" - ")}`;
}

/** Of readings that catch the same: in an early phase, both points at one place, then in order of the offer. */
function rankBy(circuit: Circuit, candidates: readonly Candidate[]): (column: number) => number {
	const ranks = candidates.map((candidate, k) => {
		const [a, b] = places(circuit, candidate);
		return candidate.phase * 2 + Number(a !== b) + k / candidates.length;
	});
	return (column) => ranks[column]!;
}

function partsOf(
	circuit: Circuit,
	phases: readonly Phase[],
	candidates: readonly Candidate[],
	chosen: readonly number[],
	catches: ReadonlyMap<number, ReadonlySet<string>>,
): SheetPart[] {
	const { loom } = circuit;
	let last: readonly string[] = [];
	let number = 0;
	return phases.flatMap((phase, p): SheetPart[] => {
		const own = chosen.filter((k) => candidates[k]!.phase === p);
		if (own.length === 0) return [];
		const point = operate(circuit, circuit.standing(phase.when), { dead: true });
		const unmated = new Set(
			[...settingsOf(loom, phase.when)].filter(([, s]) => s === "unmated").map(([id]) => id),
		);
		const stops = own.map((k) => {
			const { from, to } = candidates[k]!;
			return { places: places(circuit, candidates[k]!), key: `${sortKey(loom, from)} ${sortKey(loom, to)}` };
		});
		const rows = walk(stops, last).map(({ at, turned }): SheetRow => {
			const k = own[at]!;
			const { what, from, to, when } = candidates[k]!;
			const question = turned ? { what, from: to, to: from, when } : { what, from, to, when };
			return {
				number: ++number,
				question,
				from: pointWords(loom, question.from, unmated),
				to: pointWords(loom, question.to, unmated),
				...expected(circuit, point, question.from, question.to),
				catches: [...catches.get(k)!],
				place: placeOf(loom, question.from),
				toPlace: placeOf(loom, question.to),
				cautions: deadCautions(loom, [from, to]),
			};
		});
		const end = rows.at(-1)!;
		last = [end.place, end.toPlace];
		return [{ ...phase, rows }];
	});
}

/** Value and pass limits on the car's own network, as takeReading gives them. */
function expected(
	circuit: Circuit,
	point: Operating,
	from: string,
	to: string,
): Pick<SheetRow, "value" | "low" | "high"> {
	const probe = { kind: "ohms", a: pointOf(circuit, from), b: pointOf(circuit, to) } as const;
	const { value, deviation } = readSound(point, probe);
	const { low, high } = limits(value, deviation);
	if (Number.isNaN(value)) return { value: undefined, low, high: undefined };
	return { value, low, high };
}

function readSound(
	point: Operating,
	probe: { readonly kind: "ohms"; readonly a: number; readonly b: number },
) {
	if (separated(point, probe.a, probe.b)) return { value: Number.NaN, deviation: 0 };
	const { sourceOhms, deviation } = sensitivity(point, probe);
	return { value: sourceOhms < LEAST_OPEN ? sourceOhms : Number.NaN, deviation };
}

/** For poor connections that are not caught: the ohms from which on some reading of the sheet catches them. */
function caughtFrom(
	net: Condensed,
	rows: readonly Candidate[],
	lost: readonly Change[],
): Map<Change, number> {
	const poor = lost.flatMap((change) => {
		const [one, ...more] = change.branches;
		return one && "seriesOhms" in one && more.length === 0
			? [{ change, branch: one.branch, least: one.seriesOhms }]
			: [];
	});
	const asked = poor.flatMap(({ change, branch, least }) =>
		LADDER.filter((ohms) => ohms > least).map((ohms) => ({
			change,
			ohms,
			tried: net.change({ branches: [{ branch, seriesOhms: ohms }], added: [] }),
		})),
	);
	const { caughtBy } = detect(
		net,
		rows,
		asked.map((a) => a.tried),
	);
	const from = new Map<Change, number>();
	asked.forEach(({ change, ohms }, k) => {
		if (caughtBy[k]!.length > 0 && !from.has(change)) from.set(change, ohms);
	});
	return from;
}

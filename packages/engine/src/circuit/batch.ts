/**
 * Probes of a network under many changes, each found as a low-rank correction of kept solutions.
 *
 * A fault is there before the key is turned, so every change is followed through the same start-up as the sound
 * car: each round of it is kept as a stage, and the change's automata move at each as their own volts say. A relay
 * that would hold itself in, but never pulls in, thus stays out. Where a correction loses digits, parts come loose
 * in several places or too much moves, the change is solved anew.
 */
import type { Change } from "./changes.js";
import type { Standing, Topology } from "./circuit.js";
import { cycling, type Operating, operate, startUp } from "./operating.js";
import { type CurrentProbe, type Probe, probeValue } from "./probes.js";
import type { Shelf } from "./shelf.js";
import { TRUSTED_PIVOT } from "./small.js";
import type { Solution } from "./solution.js";
import { Stage } from "./stage.js";

/** Rounds beyond those of the sound car before a change is given to the full solve. */
const MORE_ROUNDS = 30;
/** Smallest pivot behind a value that is shown: 10 mV beside 12 V keep eight digits. */
const SHOWN_PIVOT = 5e-5;

/** Nothing moved; a correction; a few columns of the factor computed again; everything solved anew. */
export type Path = "kept" | "low rank" | "refactored" | "solved";

export interface Evaluated {
	/** The array written to. */
	readonly values: Float64Array;
	/** How it was found, for the measured comparisons. */
	readonly path: Path;
	/** States of the automata under the change. */
	readonly states: Uint8Array;
}

/** The kept start-up of a circuit in one condition; shared by all batches that look at it. */
export class Kept {
	readonly settled: Operating<Topology>;
	readonly #early: readonly Operating<Topology>[];
	#stages: readonly Stage[] | undefined;

	/**
	 * @param dead solve with all sources dead, for ohms
	 * @param shelf thousands of changes will be followed: what serves them all is made at the first, in arrays lent by
	 *   it. Readings are then the same to the last bit, whatever was asked before
	 */
	constructor(
		readonly circuit: Topology,
		readonly standing: Standing,
		readonly dead = false,
		readonly shelf?: Shelf,
	) {
		const rounds = startUp(circuit, standing, { dead });
		this.settled = rounds.at(-1)!;
		this.#early = rounds.slice(0, -1);
	}

	/** The rounds before the settled one, looking at the automata only. */
	get early(): readonly Stage[] {
		this.#stages ??= this.#early.map((point, k) => {
			const { states } = this.#early[k + 1] ?? this.settled;
			return new Stage(point, [], this.dead, [], states, TRUSTED_PIVOT, this.shelf);
		});
		return this.#stages;
	}
}

export class Batch {
	/** Probe values without any change. */
	readonly values: Float64Array;
	readonly #kept: Kept;
	readonly #probes: readonly Probe[];
	readonly #last: Stage;
	/** For each probe its first pair, as a number of the last stage's given pairs; undefined where it is the probe's own. */
	readonly #pairOf: Int32Array | undefined;
	/** Differences of the pairs, where they are not written to their places at once. */
	readonly #shown: Float64Array;
	/** Numbers of the probes that are more than a difference of potentials, with all their pairs. */
	readonly #ohms: readonly number[];
	readonly #amps: readonly {
		readonly at: number;
		readonly probe: CurrentProbe;
		readonly pairs: readonly number[];
	}[];

	/** @param pivot smallest pivot behind a value; {@link TRUSTED_PIVOT} does where a microvolt beside 12 V is nothing */
	constructor(kept: Kept, probes: readonly Probe[], pivot = SHOWN_PIVOT) {
		this.#kept = kept;
		this.#probes = probes;
		this.values = Float64Array.from(probes, (probe) => probeValue(kept.settled, probe));
		const pairs: [number, number][] = [];
		const numbers = new Map<string, number>();
		const number = (a: number, b: number): number => {
			const key = `${a},${b}`;
			let at = numbers.get(key);
			if (at === undefined) {
				at = pairs.push([a, b]) - 1;
				numbers.set(key, at);
			}
			return at;
		};
		const { branches } = kept.circuit;
		const pairsOf = probes.map((probe) =>
			probe.kind === "amps"
				? probe.branches.map(({ branch }) => number(branches[branch]!.a, branches[branch]!.b))
				: [number(probe.a, probe.b)],
		);
		const own = probes.every(({ kind }, p) => kind !== "amps" && pairsOf[p]![0] === p);
		this.#pairOf = own ? undefined : Int32Array.from(pairsOf, ([first = 0]) => first);
		this.#shown = new Float64Array(own ? 0 : pairs.length);
		this.#ohms = probes.flatMap((probe, at) => (probe.kind === "ohms" ? [at] : []));
		this.#amps = probes.flatMap((probe, at) =>
			probe.kind === "amps" ? [{ at, probe, pairs: pairsOf[at]! }] : [],
		);
		const metered = probes.flatMap((p) => (p.kind === "ohms" ? [p.a, p.b] : []));
		this.#last = new Stage(kept.settled, pairs, kept.dead, metered, undefined, pivot, kept.shelf);
	}

	/**
	 * Values of all probes under a change, NaN where one is 'open'.
	 * @param into where to write them, one per probe from `at` on
	 * @throws CircuitError where an automaton does not settle
	 */
	evaluate(
		change: Change,
		into: Float64Array = new Float64Array(this.#probes.length),
		at: number = 0,
	): Evaluated {
		// Corrections rest on a symmetric matrix.
		if (!this.#kept.dead && this.#kept.standing.controls.length > 0) return this.solveAnew(change, into, at);
		return this.#lowRank(change, into, at) ?? this.solveAnew(change, into, at);
	}

	/** The same by a full solve, for comparison. */
	solveAnew(
		change: Change,
		into: Float64Array = new Float64Array(this.#probes.length),
		at: number = 0,
	): Evaluated {
		const { circuit, standing, dead } = this.#kept;
		const point = operate(circuit, standing, { change, dead });
		for (let p = 0; p < this.#probes.length; p++) into[at + p] = probeValue(point, this.#probes[p]!);
		return { values: into, path: "solved", states: point.states };
	}

	#lowRank(change: Change, into: Float64Array, at: number): Evaluated | undefined {
		const { early, dead } = this.#kept;
		let states = (early[0] ?? this.#last).point.states;
		if (dead) return this.#atLast(change, states, into, at);
		/** States come to in rounds that the sound car has not. */
		let met: Uint8Array[] | undefined;
		for (let round = 0; round < early.length + MORE_ROUNDS; round++) {
			const stage = this.#nearest(states);
			if (stage !== this.#last && states === stage.point.states && stage.isIdle(change)) {
				states = stage.follows;
				continue;
			}
			const solution = stage.solution(change, states);
			if (solution === undefined) return undefined;
			const next = stage.next(states, solution);
			if (next === states)
				return stage === this.#last
					? this.#result(stage, solution, states, into, at)
					: this.#atLast(change, states, into, at);
			if (round >= early.length) {
				met ??= [states];
				const before = placeIn(met, next);
				if (before >= 0) throw cycling(this.#kept.standing.automata, movedIn(met.slice(before)));
				met.push(next);
			}
			states = next;
		}
		return undefined;
	}

	/** The stage whose automata stand most like these: the fewer differ, the smaller the correction. */
	#nearest(states: Uint8Array): Stage {
		// Most changes go the sound car's way.
		for (const stage of this.#kept.early) if (stage.point.states === states) return stage;
		let best = this.#last;
		let fewest = differing(states, best.point.states);
		for (const stage of this.#kept.early) {
			if (fewest === 0) break;
			const count = differing(states, stage.point.states, fewest);
			if (count < fewest) {
				best = stage;
				fewest = count;
			}
		}
		return best;
	}

	/** The probes at the settled point. */
	#atLast(change: Change, states: Uint8Array, into: Float64Array, at: number): Evaluated | undefined {
		const solution = this.#last.solution(change, states);
		return solution && this.#result(this.#last, solution, states, into, at);
	}

	#result(stage: Stage, solution: Solution, states: Uint8Array, values: Float64Array, at: number): Evaluated {
		const pairOf = this.#pairOf;
		const shown = pairOf === undefined ? values : this.#shown;
		const from = pairOf === undefined ? at : 0;
		stage.show(solution, shown, from);
		if (pairOf !== undefined) for (let p = 0; p < pairOf.length; p++) values[at + p] = shown[pairOf[p]!]!;
		// An open pair's difference is NaN already.
		if (this.#ohms.length > 0) {
			const ohms = stage.allOhms(solution, shown, from);
			for (const p of this.#ohms) if (!Number.isNaN(values[at + p])) values[at + p] = ohms[pairOf?.[p] ?? p]!;
		}
		for (const { at: p, probe, pairs } of this.#amps)
			values[at + p] = current(stage, shown, probe, pairs, solution);
		return { values, path: pathOf(solution), states };
	}
}

/** Amperes of a probe's branches from the differences shown. */
function current(
	{ point }: Stage,
	shown: Float64Array,
	probe: CurrentProbe,
	pairs: readonly number[],
	{ given }: Solution,
): number {
	let sum = 0;
	for (let k = 0; k < pairs.length; k++) {
		const { branch, sign } = probe.branches[k]!;
		let siemens = point.siemens[branch]!;
		let emf = point.emf[branch]!;
		for (const term of given)
			if (term.branch === branch) {
				siemens = term.after;
				emf = term.emf;
			}
		if (siemens !== 0) sum += sign * siemens * (shown[pairs[k]!]! - emf);
	}
	return sum;
}

/** Automata that stand otherwise; not counted further than to `enough`. */
function differing(one: Uint8Array, two: Uint8Array, enough = one.length): number {
	if (one === two) return 0;
	let count = 0;
	for (let k = 0; k < one.length && count < enough; k++) if (one[k] !== two[k]) count++;
	return count;
}

/** Number of the states that are the same as these, or -1. */
function placeIn(met: readonly Uint8Array[], states: Uint8Array): number {
	return met.findIndex((other) => differing(other, states, 1) === 0);
}

/** Automata that move in a round of states that follow each other for ever. */
function movedIn(round: readonly Uint8Array[]): number[] {
	return Array.from(round[0]!.keys()).filter((k) => round.some((states) => states[k] !== round[0]![k]));
}

function pathOf({ terms, s, potentials }: Solution): Path {
	if (terms.length === 0) return "kept";
	return potentials !== undefined || s.length === 0 ? "refactored" : "low rank";
}

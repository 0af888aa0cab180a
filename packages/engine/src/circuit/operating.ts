/**
 * The operating point: potentials of a network in which relays, lamps, diodes and units have settled.
 *
 * Fixed point over the automata's states from rest, as when the key is turned: solve, let every automaton
 * move, solve again. A sequence of states that comes back is cycling (a relay that buzzes): it is reported,
 * with the parts concerned, never cut off.
 */
import { release } from "@loomwright/linalg";
import { type Change, changed, NO_CHANGE } from "./changes.js";
import type { Automaton, Circuit, Standing, Topology } from "./circuit.js";
import { componentOf } from "./components.js";
import { CircuitError } from "./error.js";
import { joinedBy, type NetworkSolver, solverOf } from "./solver.js";

/** Largest accepted |sum of currents| / (sum of conductances x largest potential) at a node. */
export const RESIDUAL_LIMIT = 1e-10;

export interface Operating<T extends Topology = Circuit> extends NetworkSolver {
	readonly circuit: T;
	readonly standing: Standing;
	readonly change: Change;
	/** State of each automaton. */
	readonly states: Uint8Array;
	readonly siemens: Float64Array;
	/** Volts of every branch's source; of a controlled one what it comes to. */
	readonly emf: Float64Array;
	/** Node potentials in volts against the body metal. */
	readonly volts: Float64Array;
}

/** Potential of a node in volts against the body metal. */
export function voltsAt(volts: ArrayLike<number>, node: number): number {
	return node < 0 ? 0 : volts[node]!;
}

/** True when no conducting way joins the two points: a meter between them reads 'open'. */
export function separated(point: Operating<Topology>, a: number, b: number): boolean {
	return componentOf(point.components, a) !== componentOf(point.components, b);
}

/** Potential differences that an automaton looks at. */
export function watched(automaton: Automaton, volts: ArrayLike<number>): number[] {
	return automaton.watch.map(([a, b]) => voltsAt(volts, a) - voltsAt(volts, b));
}

export interface SolveOptions {
	/** What is different from the loom as it stands. */
	readonly change?: Change;
	/** Take all sources as 0 V, for an ohmmeter. Automata then stay at rest. */
	readonly dead?: boolean;
}

/**
 * Solves a circuit in a condition.
 * @throws CircuitError when it cycles or a residual is too large
 */
export function operate<T extends Topology>(
	circuit: T,
	standing: Standing,
	options: SolveOptions = {},
): Operating<T> {
	const rounds = eachRound(circuit, standing, options);
	for (;;) {
		const { value: point, done } = rounds.next();
		if (done) return point;
		release(point.numeric);
	}
}

/** The same with every round of the start-up, from all automata at rest to the settled point. */
export function startUp<T extends Topology>(
	circuit: T,
	standing: Standing,
	options: SolveOptions = {},
): Operating<T>[] {
	const rounds: Operating<T>[] = [];
	const each = eachRound(circuit, standing, options);
	for (;;) {
		const { value: point, done } = each.next();
		rounds.push(point);
		if (done) return rounds;
	}
}

/** Yields every round but the settled one, which it returns. */
function* eachRound<T extends Topology>(
	circuit: T,
	standing: Standing,
	options: SolveOptions,
): Generator<Operating<T>, Operating<T>, void> {
	const change = options.change ?? NO_CHANGE;
	const states = new Uint8Array(standing.automata.length);
	const moves: (readonly number[])[] = [];
	/** Round in which each set of states was come to. */
	const seen = new Map([[states.join(), 0]]);
	const joined = joinedBy(circuit, change.added);
	for (;;) {
		const point = solveStates(circuit, joined, standing, change, states, options.dead === true);
		const moved = options.dead === true ? [] : move(standing.automata, states, point.volts);
		if (moved.length === 0) {
			checkCurrents(point);
			return point;
		}
		moves.push(moved);
		const before = seen.get(states.join());
		if (before !== undefined) throw cycling(standing.automata, moves.slice(before).flat());
		seen.set(states.join(), moves.length);
		yield point;
	}
}

/** Lets every automaton move once; returns those that did. `states` is overwritten. */
function move(automata: readonly Automaton[], states: Uint8Array, volts: ArrayLike<number>): number[] {
	const moved: number[] = [];
	automata.forEach((automaton, k) => {
		const next = automaton.spec.next(states[k]!, watched(automaton, volts));
		if (next === states[k]) return;
		states[k] = next;
		moved.push(k);
	});
	return moved;
}

/** @param moved every automaton that moved between two times of the same states */
export function cycling(automata: readonly Automaton[], moved: readonly number[]): CircuitError {
	const parts = [...new Set(moved.map((k) => automata[k]!.spec.part))].sort();
	const keep = parts.length === 1 ? "keeps" : "keep";
	return new CircuitError(`does not settle: ${parts.join(", ")} ${keep} switching to and fro`, parts);
}

/** One solve with the automata held in `states`. */
function solveStates<T extends Topology>(
	circuit: T,
	joined: Topology,
	standing: Standing,
	change: Change,
	states: Uint8Array,
	dead: boolean,
): Operating<T> {
	const siemens = standing.siemens.slice();
	const emf = dead ? new Float64Array(siemens.length) : standing.emf.slice();
	standing.automata.forEach((automaton, k) => {
		const row = automaton.spec.table[states[k]!]!;
		automaton.branches.forEach((branch, at) => {
			siemens[branch] = row[at]!.siemens;
			if (!dead) emf[branch] = row[at]!.emf;
		});
	});
	for (const c of change.branches) {
		const now = changed(c, siemens[c.branch]!, emf[c.branch]!);
		siemens[c.branch] = now.siemens;
		if (!dead) emf[c.branch] = now.emf;
	}
	const solver = solverOf(circuit, siemens, change.added, dead ? [] : standing.controls, joined);
	const volts = sources(circuit, siemens, emf);
	solver.solve(volts);
	for (const { branch, a, b, gain } of solver.controls)
		emf[branch]! += gain * (voltsAt(volts, a) - voltsAt(volts, b));
	return { circuit, standing, change, states: states.slice(), siemens, emf, volts, ...solver };
}

/** Currents that the sources push into each node, in amperes. */
export function sources(circuit: Topology, siemens: Float64Array, emf: Float64Array): Float64Array {
	const rhs = new Float64Array(circuit.nodes.length);
	for (let k = 0; k < emf.length; k++) {
		const amps = siemens[k]! * emf[k]!;
		if (amps === 0) continue;
		const { a, b } = circuit.branches[k]!;
		if (a >= 0) rhs[a]! += amps;
		if (b >= 0) rhs[b]! -= amps;
	}
	return rhs;
}

/**
 * Kirchhoff's current law at every node, against the branches themselves and not the factored matrix.
 * @throws CircuitError naming the worst node
 */
function checkCurrents(point: Operating<Topology>): void {
	const { circuit, siemens, emf, volts, change } = point;
	const n = circuit.nodes.length;
	const sum = new Float64Array(n);
	const size = new Float64Array(n);
	// Measured against the largest potential: a part that lies at rest has nothing but rounding of its own.
	let most = Number.MIN_VALUE;
	for (const v of volts) most = Math.max(most, Math.abs(v));
	const flow = (a: number, b: number, g: number, source: number) => {
		const va = voltsAt(volts, a);
		const vb = voltsAt(volts, b);
		const amps = g * (va - vb - source);
		const scale = g * most;
		if (a >= 0) {
			sum[a]! += amps;
			size[a]! += scale;
		}
		if (b >= 0) {
			sum[b]! -= amps;
			size[b]! += scale;
		}
	};
	circuit.branches.forEach((branch, k) => {
		if (siemens[k] !== 0) flow(branch.a, branch.b, siemens[k]!, emf[k]!);
	});
	for (const link of change.added) flow(link.a, link.b, link.siemens, 0);
	for (let i = 0; i < n; i++) {
		const ratio = Math.abs(sum[i]!) / (size[i]! || 1);
		if (!(ratio <= RESIDUAL_LIMIT)) {
			const name = circuit.nodes[i]!;
			throw new CircuitError(
				`currents at ${name} do not add up (scaled residual ${ratio.toExponential(1)})`,
				[name],
			);
		}
	}
}

/**
 * What the automata look at from one kept point, and how far each difference may move before one of them could answer
 * otherwise: nearly all changes move all of them by less, and then no automaton need be asked.
 */
import type { Automaton, Topology } from "./circuit.js";
import { type Operating, voltsAt } from "./operating.js";

/** Volts by which a difference must move before its automaton is asked anew. */
const STIRS = 1e-9;
/** Share of what an automaton allows that is made use of: its edge itself is left to the automaton. */
const SAFE = 0.999;

type Pair = readonly [number, number];

export class Watches {
	/** Every watched pair once. */
	readonly pairs: readonly Pair[];
	/** 1 / volts by which each pair may move. */
	readonly sharpness: Float64Array;
	/** The largest of them. */
	readonly sharpest: number;
	readonly #automata: readonly Automaton[];
	readonly #states: Uint8Array;
	readonly #base: Float64Array;
	/** State that each automaton moves to from the point. */
	readonly #follows: Uint8Array;
	/** Numbers of the pairs that each automaton looks at. */
	readonly #at: readonly Int32Array[];
	/** Numbers of the automata that look at each pair. */
	readonly #by: readonly number[][];
	readonly #seen: readonly number[][];
	readonly #next: Uint8Array;

	constructor(point: Operating<Topology>, follows: Uint8Array) {
		const { automata } = point.standing;
		const pairs: Pair[] = [];
		const numbers = new Map<string, number>();
		this.#at = automata.map(({ watch }) =>
			Int32Array.from(watch, (pair) => {
				const key = pair.join();
				const at = numbers.get(key) ?? pairs.push(pair) - 1;
				numbers.set(key, at);
				return at;
			}),
		);
		this.pairs = pairs;
		this.#automata = automata;
		this.#states = point.states;
		this.#follows = follows;
		this.#base = Float64Array.from(pairs, ([a, b]) => voltsAt(point.volts, a) - voltsAt(point.volts, b));
		this.#seen = automata.map(({ watch }) => watch.map(() => 0));
		this.#next = new Uint8Array(automata.length);
		this.sharpness = new Float64Array(pairs.length);
		this.#by = pairs.map(() => []);
		automata.forEach(({ spec }, k) => {
			const slack = spec.slack(point.states[k]!, this.#look(k, this.#base));
			this.#at[k]!.forEach((w, q) => {
				this.#by[w]!.push(k);
				this.sharpness[w] = Math.max(this.sharpness[w]!, 1 / Math.max(STIRS, SAFE * slack[q]!));
			});
		});
		this.sharpest = this.sharpness.reduce((most, one) => Math.max(most, one), 0);
	}

	/**
	 * States that follow from `states` with the pairs at `volts`. The very array given where none moves, the sound
	 * car's own where all move as there.
	 */
	next(states: Uint8Array, volts: Float64Array): Uint8Array {
		const next = this.#next;
		next.set(this.#follows);
		let moved = false;
		// All others see what they saw from the point, or nearly, and move as there.
		if (states !== this.#states)
			for (let k = 0; k < next.length; k++)
				if (states[k] !== this.#states[k]) moved = this.#ask(k, states, volts) || moved;
		for (let w = 0; w < this.pairs.length; w++) {
			if (Math.abs(volts[w]! - this.#base[w]!) * this.sharpness[w]! < 1) continue;
			const by = this.#by[w]!;
			for (let q = 0; q < by.length; q++) moved = this.#ask(by[q]!, states, volts) || moved;
		}
		if (!moved && states === this.#states) return this.#follows;
		if (same(next, states)) return states;
		return moved ? next.slice() : this.#follows;
	}

	/** Puts where an automaton moves to; true where that is elsewhere than from the point. */
	#ask(automaton: number, states: Uint8Array, volts: Float64Array): boolean {
		const to = this.#asked(automaton, states, volts);
		if (this.#next[automaton] === to) return false;
		this.#next[automaton] = to;
		return true;
	}

	#asked(automaton: number, states: Uint8Array, volts: Float64Array): number {
		return this.#automata[automaton]!.spec.next(states[automaton]!, this.#look(automaton, volts));
	}

	/** The differences an automaton looks at, in an array kept for it. */
	#look(automaton: number, volts: Float64Array): readonly number[] {
		const seen = this.#seen[automaton]!;
		const at = this.#at[automaton]!;
		for (let q = 0; q < at.length; q++) seen[q] = volts[at[q]!]!;
		return seen;
	}
}

function same(one: Uint8Array, two: Uint8Array): boolean {
	for (let k = 0; k < one.length; k++) if (one[k] !== two[k]) return false;
	return true;
}

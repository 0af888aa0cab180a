/**
 * What an ohmmeter shows between chosen pairs under a change, w'A'^-1 w = w'A^-1 w - z'G z with z = B'A^-1 w and
 * G = (I + D S)^-1 D, and an estimate of the digits that leaves.
 *
 * A sensor line of a megohm shorted to ground, a pin that opens into a gigohm: there the difference has few digits
 * left, and the few pairs concerned are found from a factor changed in part, or from the link itself.
 */
import { solveSparseAt } from "@loomwright/linalg";
import type { Topology } from "./circuit.js";
import { type Operating, operate } from "./operating.js";
import type { Refactored } from "./refactored.js";
import { ohmsBetween } from "./resistance.js";
import type { Rows } from "./rows.js";
import { solveSmall } from "./small.js";
import { capacitance, type Numbers, type Solution } from "./solution.js";
import type { Term } from "./term.js";

/** Relative error up to which a difference is taken as it is. */
const GOOD = 1e-10;
/** Relative rounding of an entry of the inverse. */
const ROUNDING = 2 ** -52;

type Pair = readonly [number, number];

export class Metering {
	readonly #point: Operating<Topology>;
	readonly #rows: Rows;
	readonly #first: number;
	readonly #pairs: readonly Pair[];
	readonly #refactored: Refactored;
	readonly #base: Float64Array;
	readonly #out: Float64Array;
	/** Error of each pair's value, over the rounding. */
	readonly #error: Float64Array;
	/** y_w . b of one pair and every conductor changed. */
	readonly #along: number[] = [];

	/** @param first row of the first pair; the rows of the others follow */
	constructor(
		point: Operating<Topology>,
		rows: Rows,
		first: number,
		pairs: readonly Pair[],
		refactored: Refactored,
	) {
		this.#point = point;
		this.#rows = rows;
		this.#first = first;
		this.#pairs = pairs;
		this.#refactored = refactored;
		this.#base = Float64Array.from(pairs, ([a, b], p) => rows.along(first + p, a, b));
		this.#out = new Float64Array(pairs.length);
		this.#error = new Float64Array(pairs.length);
	}

	/**
	 * Ohms of every pair, in an array that the next call overwrites.
	 * @param shown NaN at `at` + pair where the pair is open: no trouble is taken there
	 */
	all(solution: Solution, shown: Float64Array, at: number): Float64Array {
		this.#found(solution, 0, this.#pairs.length, shown, at);
		return this.#out;
	}

	/** Ohms of one pair that is not open. */
	one(pair: number, solution: Solution): number {
		this.#found(solution, pair, pair + 1);
		return this.#out[pair]!;
	}

	#found(solution: Solution, from: number, to: number, shown?: Float64Array, at: number = 0): void {
		const out = this.#out;
		for (let p = from; p < to; p++) out[p] = this.#base[p]!;
		if (solution.terms.length === 0) return;
		this.#corrected(solution, from, to);
		let doubtful: number[] | undefined;
		for (let p = from; p < to; p++) {
			if (this.#error[p]! * ROUNDING <= GOOD * out[p]!) continue;
			if (shown !== undefined && Number.isNaN(shown[at + p])) continue;
			doubtful ??= [];
			doubtful.push(p);
		}
		if (doubtful !== undefined) this.#exactly(doubtful, solution);
	}

	#corrected(solution: Solution, from: number, to: number): void {
		const { terms } = solution;
		const g = gainOf(solution);
		const k = terms.length;
		if (k === 1) this.#rows.metered(this.#out, this.#error, g[0]!, terms[0]!, this.#first, from, to);
		else for (let p = from; p < to; p++) this.#quadratic(p, terms, g);
	}

	#quadratic(p: number, terms: readonly Term[], g: Numbers): void {
		const k = terms.length;
		const at = this.#first + p;
		const z = this.#along;
		for (let i = 0; i < k; i++) z[i] = this.#rows.along(at, terms[i]!.a, terms[i]!.b);
		let ohms = this.#base[p]!;
		let error = Math.abs(ohms);
		for (let i = 0; i < k; i++) {
			const { a, b } = terms[i]!;
			const size = Math.abs(this.#rows.along(at, a, -1)) + Math.abs(this.#rows.along(at, b, -1));
			for (let j = 0; j < k; j++) {
				ohms -= z[i]! * g[i * k + j]! * z[j]!;
				const most = Math.max(Math.abs(g[i * k + j]!), Math.abs(g[i * k + i]!), Math.abs(g[j * k + j]!));
				error += 2 * most * Math.abs(z[j]!) * (size + 2 * Math.abs(z[i]!));
			}
		}
		this.#out[p] = ohms;
		this.#error[p] = error;
	}

	/** Pairs of which too few digits would be left. */
	#exactly(doubtful: readonly number[], solution: Solution): void {
		const { terms, carrying } = solution;
		const [only] = terms;
		if (terms.length === 1 && only!.branch < 0 && solution.s.length === 1) {
			for (const p of doubtful) this.#out[p] = this.#pastLink(p, only!, solution);
			return;
		}
		const pairs = doubtful.map((p) => this.#pairs[p]!);
		const plain = carrying.every((term) => term.branch >= 0);
		const found = (plain && this.#refactored.ohms(carrying, pairs)?.found) || this.#anew(pairs, solution);
		doubtful.forEach((p, q) => {
			this.#out[p] = found[q]!;
		});
	}

	/**
	 * A pair w that a link b all but joins: with w = b + d, w'A'^-1 w = b'A'^-1 b + 2 b'A'^-1 d + d'A'^-1 d, where
	 * t = b'A^-1 d and e = d'A^-1 d are small and, d being local, found to all digits.
	 */
	#pastLink(pair: number, link: Term, solution: Solution): number {
		const [p, q] = this.#pairs[pair]!;
		const along = this.#rows.along(this.#first + pair, link.a, link.b) >= 0;
		const [a, b] = along ? [link.a, link.b] : [link.b, link.a];
		const s = solution.s[0]!;
		const ends = [p, q, a, b];
		const at: number[] = [];
		const weights: number[] = [];
		ends.forEach((node, k) => {
			if (node < 0) return;
			at.push(node);
			weights.push(k === 0 || k === 3 ? 1 : -1);
		});
		const x = solveSparseAt(this.#point.numeric, at, weights, at);
		const potential = (k: number) => (ends[k]! < 0 ? 0 : x[at.indexOf(ends[k]!)]!);
		const t = potential(2) - potential(3);
		const e = potential(0) - potential(1) - t;
		const pivot = 1 + link.dg * s;
		return s / pivot + (2 * t) / pivot + e - (t * t * link.dg) / pivot;
	}

	#anew(pairs: readonly Pair[], { change }: Solution): Float64Array {
		const point = operate(this.#point.circuit, this.#point.standing, { change, dead: true });
		return Float64Array.from(pairs, ([a, b]) => ohmsBetween(point, a, b));
	}
}

/** (I + D S)^-1 D of a solution, kept in it. */
function gainOf(solution: Solution): Numbers {
	if (solution.gain !== undefined) return solution.gain;
	const { terms, s } = solution;
	const k = terms.length;
	if (k === 1) {
		solution.gain = [terms[0]!.dg / (1 + terms[0]!.dg * s[0]!)];
		return solution.gain;
	}
	const g = new Float64Array(k * k);
	for (let i = 0; i < k; i++) g[i * k + i] = terms[i]!.dg;
	solveSmall(capacitance(terms, s), g, k, k);
	solution.gain = g;
	return g;
}

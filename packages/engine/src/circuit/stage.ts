/**
 * One kept operating point and what any change does to chosen node pairs there, by low rank.
 *
 * With A the conductance matrix, w a pair and y_w = A^-1 w kept, a change of conductors b_k by dg_k (and of their
 * source currents by dh_k) moves the pair's difference by sum_k c_k (y_w . b_k), c = dh - (I + D S)^-1 D u,
 * S = B'A^-1 B, u = B'v + S dh: a few multiplications, no solve (M. A. Woodbury, 'Inverting modified matrices', 1950).
 *
 * A' is singular exactly where the change leaves a part without a way to the reference, so a capacitance matrix
 * I + D S that factors with sound pivots also proves that nothing came loose but at the bridges taken out before.
 *
 * A change is asked at every stage, so what runs per change makes no closures and few objects.
 */
import { type Chains, findChains } from "./chains.js";
import type { Change } from "./changes.js";
import type { Topology } from "./circuit.js";
import { componentOf } from "./components.js";
import { type Cut, Cuts } from "./cut.js";
import { across } from "./incidence.js";
import { Metering } from "./metering.js";
import { type Operating, voltsAt } from "./operating.js";
import { OwnOhms } from "./own-ohms.js";
import { Refactored } from "./refactored.js";
import { Rows } from "./rows.js";
import type { Shelf } from "./shelf.js";
import { type Shift, shifted } from "./shift.js";
import { solveSmall, TRUSTED_PIVOT } from "./small.js";
import { capacitance, NO_NUMBERS, type Numbers, Solution } from "./solution.js";
import { TETHER } from "./solver.js";
import { hold, type Term, Terms } from "./term.js";
import { Watches } from "./watches.js";

/** Conductors changed at once from which on columns of the factor computed again are the cheaper way (bench topic `circuit`). */
const MANY_TERMS = 16;
/** Most that are corrected for before a full solve is cheaper. */
const MOST_TERMS = 100;
/** Volts by which a difference may be off: 1e-8 of 5 mV. */
const EXACT = 5e-11;
/** Roundings of a potential that a difference of two may be off by. */
const ROUNDINGS = 16;
/** One point in the network, or two. */
type Pair = readonly [number, number];

export class Stage {
	/** States that follow from here without a change. */
	readonly follows: Uint8Array;
	/** Number of the first of the given pairs: the automata's own come before them. */
	readonly #first: number;
	readonly #pairs: readonly Pair[];
	/** Differences of the automata's pairs, as last computed. */
	readonly #volts: Float64Array;
	readonly #base: Float64Array;
	readonly #rows: Rows;
	readonly #chains: Chains;
	readonly #ohms: OwnOhms;
	readonly #cuts: Cuts;
	readonly #terms: Terms;
	readonly #refactored: Refactored;
	/** Chains into which an ohmmeter pushes its own current. */
	readonly #metered: ReadonlySet<number>;
	/** Undefined with all sources dead: then nothing switches. */
	readonly #watches: Watches | undefined;
	/** By branch: watched pairs moved per ampere of its correction, in shares of what each may move; NaN until asked for. */
	readonly #peaks: Float64Array;
	#pairsIn: Map<number, number[]> | undefined;
	#metering: Metering | undefined;
	/** Places of the pairs' ends in the elimination order, the reference last; made when first needed. */
	#placed: { readonly a: Int32Array; readonly b: Int32Array } | undefined;

	/**
	 * @param pairs node pairs looked at; the automata's watches are put before them
	 * @param metered nodes into which an ohmmeter pushes its own current
	 * @param follows states of the sound car's next round; without them the point is the settled one
	 * @param shelf many changes will be asked: what serves them all is made at the first, in arrays of it
	 * @param trusted smallest pivot of a correction that will do: what is shown needs more digits than an automaton
	 */
	constructor(
		readonly point: Operating<Topology>,
		pairs: readonly Pair[],
		readonly dead: boolean,
		metered: readonly number[],
		follows: Uint8Array | undefined,
		readonly trusted: number,
		shelf: Shelf | undefined,
	) {
		this.follows = follows ?? point.states;
		this.#watches = dead ? undefined : new Watches(point, this.follows);
		const watched = this.#watches?.pairs ?? [];
		this.#first = watched.length;
		this.#pairs = watched.concat(pairs);
		this.#base = Float64Array.from(
			this.#pairs,
			([a, b]) => voltsAt(point.volts, a) - voltsAt(point.volts, b),
		);
		this.#volts = new Float64Array(watched.length);
		this.#rows = new Rows(point.numeric, this.#pairs, shelf);
		this.#chains = findChains(point.circuit, point.siemens);
		this.#ohms = new OwnOhms(point);
		this.#cuts = new Cuts(point, pairs);
		this.#terms = new Terms(point, dead);
		this.#refactored = new Refactored(point, this.#pairs);
		const inside = metered.map((node) => (node < 0 ? -1 : this.#chains.nodeOf[node]!));
		this.#metered = new Set(inside.filter((chain) => chain >= 0));
		this.#peaks = new Float64Array(point.circuit.branches.length).fill(Number.NaN);
	}

	/**
	 * True where a change of one conductor plainly moves nothing that an automaton looks at, said without solving: what
	 * is added in series takes no more than the current before it times its ohms, a link no more than lies between its
	 * ends, and no difference elsewhere moves further. Of the others nothing is said.
	 */
	isIdle({ branches, added }: Change): boolean {
		if (this.#watches === undefined || branches.length + added.length !== 1) return false;
		const { volts, siemens, emf, circuit, components } = this.point;
		const [one] = branches;
		if (one === undefined) {
			const { a, b } = added[0]!;
			if (componentOf(components, a) !== componentOf(components, b)) return false;
			return Math.abs(voltsAt(volts, a) - voltsAt(volts, b)) * this.#watches.sharpest < 1;
		}
		if (!("seriesOhms" in one)) return false;
		const { a, b } = circuit.branches[one.branch]!;
		const va = voltsAt(volts, a);
		const vb = voltsAt(volts, b);
		const rounding = ROUNDINGS * Number.EPSILON * (Math.abs(va) + Math.abs(vb));
		const amps = siemens[one.branch]! * (Math.abs(va - vb - emf[one.branch]!) + rounding);
		return amps * one.seriesOhms * this.#watches.sharpest < 1;
	}

	/**
	 * States that follow under a change.
	 * The very array given where none moves.
	 */
	next(states: Uint8Array, solution: Solution): Uint8Array {
		if (this.#watches === undefined || (states === this.point.states && this.#isQuiet(solution)))
			return this.follows;
		this.#differences(solution, 0, this.#first, this.#volts, 0);
		return this.#watches.next(states, this.#volts);
	}

	/** True where no watched difference can move so far that an automaton answers otherwise than without the change. */
	#isQuiet({ terms, c, s, potentials }: Solution): boolean {
		const count = terms.length;
		if (count === 0) return potentials === undefined;
		if (potentials !== undefined || c.length < count) return false;
		let most = 0;
		for (let k = 0; k < count; k++) {
			const { shift } = terms[k]!;
			if (shift !== undefined && this.#isWatched(shift.chain)) return false;
			// Nowhere does a current move a difference further than between the points where it is pushed in.
			most += Math.abs(c[k]!) * s[k * count + k]!;
		}
		if (most * this.#watches!.sharpest < 1) return true;
		if (!this.#rows.made) return false;
		most = 0;
		for (let k = 0; k < count; k++) most += Math.abs(c[k]!) * this.#peak(terms[k]!);
		return most < 1;
	}

	#peak(term: Term): number {
		const sharpness = this.#watches!.sharpness;
		if (term.branch < 0) return this.#rows.peak(term, sharpness);
		let peak = this.#peaks[term.branch]!;
		if (Number.isNaN(peak)) {
			peak = this.#rows.peak(term, sharpness);
			this.#peaks[term.branch] = peak;
		}
		return peak;
	}

	/** True where an automaton looks at a point inside the chain. */
	#isWatched(chain: number): boolean {
		// In ascending order: the automata's pairs come first.
		const [first] = this.#pairsInChain(chain);
		return first !== undefined && first < this.#first;
	}

	/** The correction for a change with the automata in `states`; undefined where it must be solved anew. */
	solution(change: Change, states: Uint8Array): Solution | undefined {
		const given = this.#terms.of(change, states);
		const cut = this.#cuts.of(given);
		if (cut === undefined) return undefined;
		const { bridges, tethers } = cut;
		const carrying = bridges.length > 0 ? given.filter((t) => !bridges.includes(t.branch)) : given;
		// A part that was joined, or with sources dead a link that stands in no entry of the matrix, is corrected for.
		const plain = allBranches(carrying);
		const exact = tethers.length === 0 && (plain || !this.dead);
		if (exact && carrying.length > MANY_TERMS) return this.#again(change, given, carrying, cut);
		if (carrying.length > MOST_TERMS) return undefined;
		const worked = shifted(this.point, this.#chains, this.#metered, carrying, this.#terms);
		const terms = tethers.length > 0 ? [...worked, ...tethers] : worked;
		const s = this.#ohms.between(terms);
		const c = terms.length === 1 ? this.#one(terms[0]!, s[0]!) : this.#several(terms, s);
		if (c !== undefined) return new Solution(change, given, carrying, terms, cut, c, s);
		if (!exact) return undefined;
		return (plain && this.#held(change, given, carrying, cut)) || this.#again(change, given, carrying, cut);
	}

	/** Where parts come loose: each held at one node, the correction is not singular. */
	#held(change: Change, given: readonly Term[], carrying: readonly Term[], cut: Cut): Solution | undefined {
		const loose = this.#refactored.loose(carrying);
		if (loose.length === 0) return undefined;
		const terms = [...carrying, ...loose.map((part) => hold(part.keys().next().value!, TETHER))];
		const s = this.#ohms.between(terms);
		const c = this.#several(terms, s);
		return c && new Solution(change, given, carrying, terms, { ...cut, loose }, c, s);
	}

	/** By a few columns of the factor computed again. With sources dead only what a meter's own current does is asked. */
	#again(change: Change, given: readonly Term[], terms: readonly Term[], cut: Cut): Solution | undefined {
		const again = this.dead ? this.#refactored.gain(terms) : this.#refactored.potentials(terms);
		if (again === undefined) return undefined;
		const { found, loose } = again;
		const parts = loose.length > 0 ? { ...cut, loose } : cut;
		const all = "g" in found ? found.terms : terms;
		const solution = new Solution(change, given, terms, all, parts, NO_NUMBERS, NO_NUMBERS);
		if ("g" in found) solution.gain = found.g;
		else solution.potentials = found;
		return solution;
	}

	/** c of a single conductor. */
	#one(term: Term, s: number): Numbers | undefined {
		const pivot = 1 + term.dg * s;
		const u = across(this.point.volts, term) + s * term.dh;
		if (!(Math.abs(pivot) > this.trusted || this.#isExact(term, Math.abs(pivot), u))) return undefined;
		return [term.dh - (term.dg * u) / pivot];
	}

	/** True where the volts across a conductor come out right although its pivot is small: little lies there to be off. */
	#isExact({ a, b }: Term, pivot: number, u: number): boolean {
		if (this.dead || !(pivot > TRUSTED_PIVOT)) return false;
		const { volts } = this.point;
		const size = Math.abs(voltsAt(volts, a)) + Math.abs(voltsAt(volts, b)) + Math.abs(u) / pivot;
		return (Number.EPSILON * size) / pivot < EXACT;
	}

	#several(terms: readonly Term[], s: Numbers): Numbers | undefined {
		const k = terms.length;
		if (k === 0) return NO_NUMBERS;
		const y = new Float64Array(k);
		for (let i = 0; i < k; i++) {
			const term = terms[i]!;
			let u = across(this.point.volts, term);
			for (let j = 0; j < k; j++) u += s[i * k + j]! * terms[j]!.dh;
			y[i] = term.dg * u;
		}
		if (solveSmall(capacitance(terms, s), y, k, 1, this.trusted) === undefined) return undefined;
		for (let i = 0; i < k; i++) y[i] = terms[i]!.dh - y[i]!;
		return y;
	}

	/** Differences of the given pairs under a change, into `out` from `at` on; NaN where a pair is open. */
	show(solution: Solution, out: Float64Array, at: number): void {
		this.#differences(solution, this.#first, this.#pairs.length, out, at - this.#first);
		this.#cuts.mark(out, at, solution.cut);
	}

	/** Differences of pairs from (inclusive) to (exclusive) into `out`, that of pair p at p + offset. */
	#differences(
		{ terms, c, s, potentials }: Solution,
		from: number,
		to: number,
		out: Float64Array,
		offset: number,
	): void {
		if (potentials !== undefined) {
			this.#placed ??= placedIn(this.#pairs, this.point.circuit.symbolic.inverse);
			const { a, b } = this.#placed;
			for (let p = from; p < to; p++) out[p + offset] = potentials[a[p]!]! - potentials[b[p]!]!;
			return;
		}
		const count = terms.length;
		// Without corrections nothing moves: no change, or sources dead.
		if (c.length === 0) for (let p = from; p < to; p++) out[p + offset] = this.#base[p]!;
		if (c.length < count) return;
		for (let k = 0; k < count; k++)
			this.#rows.add(out, offset, k === 0 ? this.#base : undefined, c[k]!, terms[k]!, from, to);
		for (let k = 0; k < count; k++) {
			const term = terms[k]!;
			const { shift } = term;
			if (shift === undefined) continue;
			let along = across(this.point.volts, term);
			for (let j = 0; j < count; j++) along += s[k * count + j]! * c[j]!;
			// Volts across the worked branch from near to far, less its source: all of it lies across an opening,
			// the added ohms' share of it across added ohms. Points between the two branches lie that much off.
			const drop = (shift.near === term.a ? along : -along) - shift.emf;
			const off = shift.ohms === Number.POSITIVE_INFINITY ? drop : drop * term.after * shift.ohms;
			this.#correct(shift, off, from, to, out, offset);
		}
	}

	#correct(shift: Shift, off: number, from: number, to: number, out: Float64Array, offset: number): void {
		const pairs = this.#pairsInChain(shift.chain);
		for (let q = 0; q < pairs.length; q++) {
			const p = pairs[q]!;
			if (p < from || p >= to) continue;
			const pair = this.#pairs[p]!;
			if (this.#between(pair[0], shift)) out[p + offset]! -= off;
			if (this.#between(pair[1], shift)) out[p + offset]! += off;
		}
	}

	/** True for a point between the true and the worked branch. */
	#between(node: number, shift: Shift): boolean {
		if (node < 0 || this.#chains.nodeOf[node] !== shift.chain) return false;
		const at = this.#chains.nodeAt[node]!;
		return at >= shift.from && at < shift.to;
	}

	/** Pairs with an end inside a chain. */
	#pairsInChain(chain: number): readonly number[] {
		this.#pairsIn ??= this.#pairsByChain();
		return this.#pairsIn.get(chain) ?? NONE;
	}

	#pairsByChain(): Map<number, number[]> {
		const found = new Map<number, number[]>();
		this.#pairs.forEach((pair, p) => {
			for (const chain of new Set(pair.map((node) => (node < 0 ? -1 : this.#chains.nodeOf[node]!)))) {
				if (chain < 0) continue;
				const list = found.get(chain);
				if (list) list.push(p);
				else found.set(chain, [p]);
			}
		});
		return found;
	}

	/** True where the change leaves no conducting way between two nodes. */
	open(a: number, b: number, { cut }: Solution): boolean {
		return this.#cuts.open(a, b, cut);
	}

	/** Ohms of all given pairs, in an array that the next call overwrites; `show` has written to `shown` from `at` on. */
	allOhms(solution: Solution, shown: Float64Array, at: number): Float64Array {
		return this.#meter().all(solution, shown, at);
	}

	/** Ohms of one of the given pairs. */
	ohms(pair: number, solution: Solution): number {
		return this.#meter().one(pair, solution);
	}

	#meter(): Metering {
		this.#metering ??= new Metering(
			this.point,
			this.#rows,
			this.#first,
			this.#pairs.slice(this.#first),
			this.#refactored,
		);
		return this.#metering;
	}
}

const NONE: readonly number[] = [];

function placedIn(pairs: readonly Pair[], inverse: Int32Array): { a: Int32Array; b: Int32Array } {
	const place = (node: number) => (node < 0 ? inverse.length : inverse[node]!);
	return { a: Int32Array.from(pairs, ([a]) => place(a)), b: Int32Array.from(pairs, ([, b]) => place(b)) };
}

function allBranches(terms: readonly Term[]): boolean {
	for (const { branch } of terms) if (branch < 0) return false;
	return true;
}

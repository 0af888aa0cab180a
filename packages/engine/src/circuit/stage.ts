/**
 * One kept operating point and what any change does to chosen node pairs there, by low rank.
 *
 * With A the conductance matrix, w a pair and y_w = A^-1 w kept, a change of conductors b_k by dg_k (and of their
 * source currents by dh_k) moves the pair's difference by sum_k c_k (y_w . b_k), c = dh - (I + D S)^-1 D u,
 * S = B'A^-1 B, u = B'v + S dh: a few multiplications, no solve (M. A. Woodbury, 'Inverting modified matrices', 1950).
 *
 * A' is singular exactly where the change leaves a part without a way to the reference, so a capacitance matrix
 * I + D S that factors with sound pivots also proves that nothing came loose but at the bridges taken out before.
 */
import { type SelectedInverse, selectedInverse } from "@loomwright/linalg";
import type { BranchState } from "../devices/index.js";
import { type Bridges, findBridges } from "./bridges.js";
import { type Chains, findChains } from "./chains.js";
import { type Change, changed } from "./changes.js";
import type { Topology } from "./circuit.js";
import { componentOf } from "./components.js";
import { type Operating, voltsAt } from "./operating.js";
import { across, column } from "./rank-one.js";
import { Rows } from "./rows.js";
import { type Shift, shifted } from "./shift.js";
import { solveSmall, TRUSTED_PIVOT } from "./small.js";
import { TETHER } from "./solver.js";
import type { Term } from "./term.js";

/** Most conductors changed at once before a full solve is the cheaper way (bench topic `circuit`). */
const MOST_TERMS = 100;
/** Share of a difference below which it is computed another way. */
const CANCELLED = 1e-3;
/** Columns kept at once: those of one large connector. */
const MOST_COLUMNS = 128;
/** Volts by which a difference must move before its automaton is asked anew. */
const STIRS = 1e-9;
/** Correction in amperes that moves nothing. */
const NOTHING = 1e-14;

/** What a change separates and joins. */
interface Cut {
	/** Bridges opened: they carry no current, so they are taken out of the correction. */
	readonly bridges: readonly number[];
	/** Components that a closing joins to another, by number. */
	readonly merged: ReadonlyMap<number, number>;
	/** Tethers that became superfluous. */
	readonly tethers: readonly Term[];
}

const WHOLE: Cut = { bridges: [], merged: new Map(), tethers: [] };

export interface Solution {
	/** All that changed, as given; `terms` are those that carry current, moved along their chains. */
	readonly given: readonly Term[];
	readonly terms: readonly Term[];
	readonly c: Float64Array;
	readonly s: Float64Array;
	readonly cut: Cut;
}

export class Stage {
	/** Differences of the pairs under the last change put to `differences`. */
	readonly volts: Float64Array;
	readonly #base: Float64Array;
	readonly #rows: Rows;
	readonly #chains: Chains;
	readonly #inverse: SelectedInverse;
	readonly #metered: ReadonlySet<number>;
	/** First pair of each automaton's watch. */
	readonly #watchOf: number[] = [];
	/** State that each automaton moves to from here without a change. */
	readonly #follows: Uint8Array;
	readonly #next: Uint8Array;
	readonly #seenBy: readonly number[][];
	/** No automaton moves from here without a change. */
	readonly #stays: boolean;
	#bridges: Bridges | undefined;
	#pairsIn: Map<number, number[]> | undefined;
	readonly #columns = new Map<string, Float64Array>();

	/**
	 * @param pairs node pairs looked at; the automata's watches are put before them
	 * @param metered nodes into which an ohmmeter pushes its own current
	 * @param follows states of the sound car's next round; without them the point is the settled one
	 */
	constructor(
		readonly point: Operating<Topology>,
		pairs: readonly (readonly [number, number])[],
		readonly dead: boolean,
		metered: readonly number[],
		follows?: Uint8Array,
	) {
		const all: (readonly [number, number])[] = [];
		const { automata } = point.standing;
		if (!dead)
			for (const { watch } of automata) {
				this.#watchOf.push(all.length);
				all.push(...watch);
			}
		this.first = all.length;
		all.push(...pairs);
		this.#pairs = all;
		this.#base = Float64Array.from(all, ([a, b]) => voltsAt(point.volts, a) - voltsAt(point.volts, b));
		this.volts = new Float64Array(all.length);
		this.#rows = new Rows(point.numeric, point.circuit.nodes.length, all);
		this.#chains = findChains(point.circuit, point.siemens);
		this.#inverse = selectedInverse(point.numeric);
		this.#metered = new Set(
			metered
				.filter((node) => node >= 0)
				.map((node) => this.#chains.nodeOf[node]!)
				.filter((chain) => chain >= 0),
		);
		this.#follows = follows ?? point.states;
		this.#stays = follows === undefined;
		this.#next = new Uint8Array(this.#watchOf.length);
		this.#seenBy = automata.map(({ watch }) => watch.map(() => 0));
	}

	/** Index of the first of the given pairs in `volts`; before it lie the automata's. */
	readonly first: number;
	readonly #pairs: readonly (readonly [number, number])[];

	/**
	 * States that follow under a change.
	 * The very array given where none moves. `volts` of the automata's pairs are overwritten.
	 */
	next(states: Uint8Array, solution: Solution): Uint8Array {
		const { automata } = this.point.standing;
		const still = states === this.point.states && solution.c.every((c) => Math.abs(c) < NOTHING);
		if (still) return this.#stays ? states : this.#follows;
		this.differences(solution, "automata");
		const next = this.#next;
		let changes = false;
		for (let k = 0; k < next.length; k++) {
			const at = this.#watchOf[k]!;
			const end = this.#watchOf[k + 1] ?? this.first;
			let stirs = states[k] !== this.point.states[k];
			for (let w = at; w < end && !stirs; w++) stirs = Math.abs(this.volts[w]! - this.#base[w]!) > STIRS;
			next[k] = stirs ? automata[k]!.spec.next(states[k]!, this.#seen(k, at)) : this.#follows[k]!;
			if (next[k] !== states[k]) changes = true;
		}
		if (!changes) return states;
		return next.every((state, k) => state === this.#follows[k]) ? this.#follows : next.slice();
	}

	/** The differences an automaton looks at, in an array kept for it. */
	#seen(automaton: number, at: number): readonly number[] {
		const seen = this.#seenBy[automaton]!;
		for (let w = 0; w < seen.length; w++) seen[w] = this.volts[at + w]!;
		return seen;
	}

	/** Everything that differs from the kept point: the change itself and the automata that moved. */
	#terms(change: Change, states: Uint8Array): Term[] {
		const terms: Term[] = [];
		if (states === this.point.states) {
			for (const c of change.branches) {
				const { siemens, emf } = this.point;
				const now = changed(c, siemens[c.branch]!, emf[c.branch]!);
				this.#put(terms, c.branch, now.siemens, now.emf);
			}
		} else for (const [branch, now] of this.#become(change, states)) this.#put(terms, branch, now.siemens, now.emf);
		for (const { a, b, siemens: dg } of change.added)
			terms.push({ a, b, dg, dh: 0, branch: -1, before: 0, after: dg, emf: 0, shift: undefined });
		return terms;
	}

	/** What branches become by the automata that moved and by the change, which has the last word. */
	#become(change: Change, states: Uint8Array): Map<number, BranchState> {
		const { siemens, emf, standing } = this.point;
		const to = new Map<number, BranchState>();
		standing.automata.forEach((automaton, k) => {
			if (states[k] === this.point.states[k]) return;
			const row = automaton.spec.table[states[k]!]!;
			automaton.branches.forEach((branch, at) => {
				to.set(branch, row[at]!);
			});
		});
		for (const c of change.branches) {
			const own = to.get(c.branch);
			to.set(c.branch, changed(c, own?.siemens ?? siemens[c.branch]!, own?.emf ?? emf[c.branch]!));
		}
		return to;
	}

	#put(terms: Term[], branch: number, after: number, emf: number): void {
		const before = this.point.siemens[branch]!;
		const dg = after - before;
		const dh = this.dead ? 0 : after * emf - before * this.point.emf[branch]!;
		if (dg === 0 && dh === 0) return;
		const { a, b } = this.point.circuit.branches[branch]!;
		terms.push({ a, b, dg, dh, branch, before, after, emf, shift: undefined });
	}

	/** The correction for a change with the automata in `states`; undefined where it must be solved anew. */
	solution(change: Change, states: Uint8Array): Solution | undefined {
		const given = this.#terms(change, states);
		if (given.length > MOST_TERMS) return undefined;
		const cut = this.#cut(given);
		if (cut === undefined) return undefined;
		const carrying = cut.bridges.length > 0 ? given.filter((t) => !cut.bridges.includes(t.branch)) : given;
		const worked = shifted(this.point, this.#chains, this.#metered, carrying);
		const terms = cut.tethers.length > 0 ? [...worked, ...cut.tethers] : worked;
		const s = this.#between(terms);
		const c = terms.length === 1 ? this.#one(terms[0]!, s[0]!) : this.#several(terms, s);
		return c && { given, terms, c, s, cut };
	}

	/** c of a single conductor. */
	#one(term: Term, s: number): Float64Array | undefined {
		const pivot = 1 + term.dg * s;
		if (!(Math.abs(pivot) > TRUSTED_PIVOT)) return undefined;
		const u = across(this.point.volts, term) + s * term.dh;
		return Float64Array.of(term.dh - (term.dg * u) / pivot);
	}

	#several(terms: readonly Term[], s: Float64Array): Float64Array | undefined {
		const k = terms.length;
		const m = new Float64Array(k * k);
		const y = new Float64Array(k);
		for (let i = 0; i < k; i++) {
			const term = terms[i]!;
			let u = across(this.point.volts, term);
			for (let j = 0; j < k; j++) {
				u += s[i * k + j]! * terms[j]!.dh;
				m[i * k + j] = term.dg * s[i * k + j]! + (i === j ? 1 : 0);
			}
			y[i] = term.dg * u;
		}
		if (solveSmall(m, y, k) === undefined) return undefined;
		for (let i = 0; i < k; i++) y[i] = terms[i]!.dh - y[i]!;
		return y;
	}

	/** What the change separates at bridges, and what it joins. Undefined where that cannot be said cheaply. */
	#cut(terms: readonly Term[]): Cut | undefined {
		const { circuit, components: found, siemens } = this.point;
		let merged: Map<number, number> | undefined;
		const bridges: number[] = [];
		for (const term of terms) {
			if (term.before === 0 && term.after > 0) {
				const one = componentOf(found, term.a);
				const two = componentOf(found, term.b);
				if (one === two) continue;
				merged ??= new Map();
				// Two parts through a third: leave it to the full solve.
				if (merged.has(one) || merged.has(two)) return undefined;
				merged.set(Math.max(one, two), Math.min(one, two));
			} else if (term.before > 0 && term.after === 0) {
				this.#bridges ??= findBridges(circuit, siemens);
				if (this.#bridges.is[term.branch] === 1) bridges.push(term.branch);
			}
		}
		if (merged === undefined) return bridges.length > 0 ? { ...WHOLE, bridges } : WHOLE;
		// A conductor added may be a new way round an opened bridge, or hang on a part that another bridge cuts off.
		if (bridges.length > 0 || [...merged.values()].some((c) => c !== 0 && merged.has(c))) return undefined;
		const tethers = [...merged.keys()].map((part): Term => {
			const node = found.first[part]!;
			return {
				a: node,
				b: -1,
				dg: -TETHER,
				dh: 0,
				branch: -1,
				before: TETHER,
				after: 0,
				emf: 0,
				shift: undefined,
			};
		});
		return { bridges, merged, tethers };
	}

	/** S = B'A^-1 B, ohms between the changed conductors: from kept rows, the selected inverse, else by a solve. */
	#between(terms: readonly Term[]): Float64Array {
		const k = terms.length;
		const s = new Float64Array(k * k);
		if (k === 1) {
			const [term] = terms;
			s[0] = this.#ownOhms(term!);
			// What is left after cancelling is small: take the ohms by a solve, which loses no digits.
			if (Math.abs(1 + term!.dg * s[0]) < CANCELLED) s[0] = across(this.#columnOf(term!), term!);
			return s;
		}
		terms.forEach((term, j) => {
			const z = this.#columnOf(term);
			for (let i = 0; i < k; i++) s[i * k + j] = across(z, terms[i]!);
		});
		return s;
	}

	/** b'A^-1 b: from the selected inverse where its nodes are neighbours, else by a solve. */
	#ownOhms(term: Term): number {
		const { a, b } = term;
		const { diagonal } = this.#inverse;
		if (a < 0) return b < 0 ? 0 : diagonal[b]!;
		if (b < 0) return diagonal[a]!;
		const sum = diagonal[a]! + diagonal[b]!;
		const inside = this.#inverse.at(a, b);
		// Many links lead to one point (a supply): its column is kept and serves them all.
		const between = Number.isNaN(inside) ? this.#columnOf({ branch: -1, a: b, b: -1 })[a]! : inside;
		const own = sum - 2 * between;
		return own > CANCELLED * sum ? own : across(this.#columnOf(term), term);
	}

	/** Kept columns by conductor; let go together when there are too many. */
	#columnOf(term: { readonly branch: number; readonly a: number; readonly b: number }): Float64Array {
		const key = term.branch >= 0 ? `${term.branch}` : `${term.a},${term.b}`;
		let z = this.#columns.get(key);
		if (z === undefined) {
			if (this.#columns.size >= MOST_COLUMNS) this.#columns.clear();
			z = column(this.point.numeric, term);
			this.#columns.set(key, z);
		}
		return z;
	}

	/** Puts the differences under a change into `volts`: the automata's, or those of the given pairs. */
	differences({ terms, c, s }: Solution, which: "automata" | "pairs"): void {
		const out = this.volts;
		const from = which === "automata" ? 0 : this.first;
		const to = which === "automata" ? this.first : out.length;
		for (let p = from; p < to; p++) out[p] = this.#base[p]!;
		for (let k = 0; k < terms.length; k++) this.#rows.add(out, c[k]!, terms[k]!.a, terms[k]!.b, from, to);
		for (let k = 0; k < terms.length; k++) {
			const { shift, a, b, after } = terms[k]!;
			if (shift === undefined) continue;
			let along = across(this.point.volts, { a, b });
			for (let j = 0; j < terms.length; j++) along += s[k * terms.length + j]! * c[j]!;
			// Volts across the worked branch from near to far, less its source: all of it lies across an opening,
			// the added ohms' share of it across added ohms. Points between the two branches lie that much off.
			const drop = (shift.near === a ? along : -along) - shift.emf;
			this.#correct(
				out,
				shift,
				shift.ohms === Number.POSITIVE_INFINITY ? drop : drop * after * shift.ohms,
				from,
				to,
			);
		}
	}

	#correct(out: Float64Array, shift: Shift, drop: number, from: number, to: number): void {
		const { nodeOf, nodeAt } = this.#chains;
		const inside = (node: number) =>
			node >= 0 && nodeOf[node] === shift.chain && nodeAt[node]! >= shift.from && nodeAt[node]! < shift.to;
		for (const p of this.#pairsInChain(shift.chain)) {
			if (p < from || p >= to) continue;
			const [a, b] = this.#pairs[p]!;
			if (inside(a)) out[p]! -= drop;
			if (inside(b)) out[p]! += drop;
		}
	}

	/** Pairs with an end inside a chain. */
	#pairsInChain(chain: number): readonly number[] {
		if (this.#pairsIn === undefined) {
			this.#pairsIn = new Map();
			for (let p = 0; p < this.#pairs.length; p++)
				for (const of of new Set(
					this.#pairs[p]!.map((node) => (node < 0 ? -1 : this.#chains.nodeOf[node]!)),
				)) {
					if (of < 0) continue;
					const list = this.#pairsIn.get(of);
					if (list) list.push(p);
					else this.#pairsIn.set(of, [p]);
				}
		}
		return this.#pairsIn.get(chain) ?? [];
	}

	/** True where the change leaves no conducting way between two nodes. */
	open(a: number, b: number, { cut }: Solution): boolean {
		const found = this.point.components;
		const label = (node: number) => {
			const own = componentOf(found, node);
			return cut.merged.get(own) ?? own;
		};
		return label(a) !== label(b) || cut.bridges.some((bridge) => this.#bridges!.separates(bridge, a, b));
	}

	/** w'(A + B D B')^-1 w for one of the given pairs. */
	ohms(pair: number, { terms, s }: Solution): number {
		const k = terms.length;
		const at = this.first + pair;
		const [a, b] = this.#pairs[at]!;
		let ohms = this.#rows.along(at, a, b);
		if (k === 0) return ohms;
		const along = terms.map((term) => this.#rows.along(at, term.a, term.b));
		const m = new Float64Array(k * k);
		const r = new Float64Array(k);
		for (let i = 0; i < k; i++) {
			r[i] = terms[i]!.dg * along[i]!;
			for (let j = 0; j < k; j++) m[i * k + j] = terms[i]!.dg * s[i * k + j]! + (i === j ? 1 : 0);
		}
		solveSmall(m, r, k);
		for (let i = 0; i < k; i++) ohms -= along[i]! * r[i]!;
		return ohms;
	}
}

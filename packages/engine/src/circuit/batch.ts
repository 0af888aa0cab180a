/**
 * Probes of a network under many changes: one factor kept, one adjoint row per probe, every change a low-rank
 * correction of the kept solution.
 *
 * With A the conductance matrix, w a probe and y_w = A^-1 w kept, a change of conductors b_k by dg_k (and of their
 * source currents by dh_k) moves the probe by sum_k c_k (y_w . b_k), c = dh - (I + D S)^-1 D u: a few
 * multiplications, no solve. S comes from the selected inverse where it can.
 * A change falls back to a full solve where automata move far, parts come loose in several places, or digits are lost.
 */
import { type SelectedInverse, selectedInverse } from "@loomwright/linalg";
import { type Bridges, findBridges } from "./bridges.js";
import { type Chains, findChains } from "./chains.js";
import type { Change } from "./changes.js";
import type { BranchState } from "../devices/index.js";
import { componentOf } from "./components.js";
import { type Operating, operate, separated, voltsAt } from "./operating.js";
import { type Probe, probeValue } from "./probes.js";
import { across, column } from "./rank-one.js";
import { solveSmall } from "./small.js";

/** Most conductors changed at once before a full solve is the cheaper way (measured: bench topic `circuit`). */
const MOST_TERMS = 12;
const MOST_ROUNDS = 8;

/** One conductor's change: siemens and source amperes added. */
interface Term {
	readonly a: number;
	readonly b: number;
	readonly dg: number;
	readonly dh: number;
	/** Branch number, or -1 for an added conductor. */
	readonly branch: number;
	/** Siemens before and after. */
	readonly before: number;
	readonly after: number;
	readonly emf: number;
	/** Where the change stands in for one of another branch of its chain. */
	readonly shift: Shift | undefined;
}

/** A change moved along its chain: points between the true and the worked branch are put right by it. */
interface Shift {
	readonly chain: number;
	/** Interior nodes whose position lies in [from, to) are between the two branches. */
	readonly from: number;
	readonly to: number;
	/** Ohms added; Infinity for an opening. */
	readonly ohms: number;
	/** End of the worked branch on the true branch's side, and its other end. */
	readonly near: number;
	readonly far: number;
	/** Source of the worked branch, positive at `near`. */
	readonly emf: number;
}

export type Path = "kept" | "low rank" | "solved";

export interface Evaluated {
	/** One value per probe; NaN is 'open'. */
	readonly values: Float64Array;
	/** How it was found, for the measured comparisons. */
	readonly path: Path;
	/** States of the automata under the change. */
	readonly states: Uint8Array;
}

interface Row {
	readonly a: number;
	readonly b: number;
	readonly y: Float64Array;
}

export class Batch {
	/** Probe values without any change. */
	readonly values: Float64Array;
	readonly #point: Operating;
	readonly #probes: readonly Probe[];
	readonly #rows: Row[] = [];
	readonly #rowOf = new Map<string, number>();
	readonly #dead: boolean;
	#inverse: SelectedInverse | undefined;
	#bridges: Bridges | undefined;
	#chains: Chains | undefined;
	#metered: Set<number> | undefined;

	/** @param point an operating point without a change */
	constructor(point: Operating, probes: readonly Probe[], dead = false) {
		this.#point = point;
		this.#probes = probes;
		this.#dead = dead;
		this.values = Float64Array.from(probes, (probe) => probeValue(point, probe));
	}

	/** Values of all probes under a change. */
	evaluate(change: Change): Evaluated {
		return this.#lowRank(change) ?? this.#solve(change);
	}

	/** The same by a full solve, for comparison. */
	solveAnew(change: Change): Evaluated {
		return this.#solve(change);
	}

	#solve(change: Change): Evaluated {
		const { circuit, standing } = this.#point;
		const point = operate(circuit, standing, { change, dead: this.#dead });
		const values = Float64Array.from(this.#probes, (probe) => probeValue(point, probe));
		return { values, path: "solved", states: point.states };
	}

	#lowRank(change: Change): Evaluated | undefined {
		const automata = this.#point.standing.automata;
		let states = this.#point.states;
		for (let round = 0; round < MOST_ROUNDS; round++) {
			const terms = this.#terms(change, states);
			if (terms.length > MOST_TERMS) return undefined;
			const cut = this.#cut(terms);
			if (cut === "several") return undefined;
			const moving = this.#shifted(terms.filter((t) => t.branch < 0 || t.branch !== cut.bridge));
			const solution = this.#corrections(moving);
			if (solution === undefined) return undefined;
			if (this.#dead || automata.length === 0) return this.#result(terms, moving, solution, cut, states);
			const next = new Uint8Array(states);
			let moved = false;
			for (let k = 0; k < automata.length; k++) {
				const { spec, watch } = automata[k]!;
				const volts = watch.map(([a, b]) => this.#difference(a, b, moving, solution.c));
				next[k] = spec.next(states[k]!, volts);
				if (next[k] !== states[k]) moved = true;
				else if (terms.length > 0 && spec.doubtful?.(states[k]!, volts)) return undefined;
			}
			if (!moved) return this.#result(terms, moving, solution, cut, states);
			states = next;
		}
		return undefined;
	}

	/** Everything that differs from the kept point: the change itself and the automata that moved. */
	#terms(change: Change, states: Uint8Array): Term[] {
		const { circuit, siemens, emf, standing } = this.#point;
		const to = new Map<number, BranchState>();
		standing.automata.forEach((automaton, k) => {
			if (states[k] === this.#point.states[k]) return;
			const row = automaton.spec.table[states[k]!]!;
			automaton.branches.forEach((branch, at) => {
				to.set(branch, row[at]!);
			});
		});
		for (const c of change.branches) {
			const own = to.get(c.branch)?.emf ?? emf[c.branch]!;
			to.set(c.branch, { siemens: c.siemens, emf: c.emf ?? own });
		}
		const terms: Term[] = [];
		for (const [branch, { siemens: after, emf: source }] of to) {
			const before = siemens[branch]!;
			const dh = this.#dead ? 0 : after * source - before * emf[branch]!;
			const dg = after - before;
			if (dg === 0 && dh === 0) continue;
			const { a, b } = circuit.branches[branch]!;
			terms.push({ a, b, dg, dh, branch, before, after, emf: source, shift: undefined });
		}
		for (const { a, b, siemens: dg } of change.added)
			terms.push({ a, b, dg, dh: 0, branch: -1, before: 0, after: dg, emf: 0, shift: undefined });
		return terms;
	}

	/** The same changes, each worked on the largest resistance of its chain where it is alone there. */
	#shifted(terms: readonly Term[]): Term[] {
		const { circuit, siemens, emf } = this.#point;
		this.#chains ??= findChains(circuit, siemens);
		const chains = this.#chains;
		const chainOf = (t: Term) => (t.branch < 0 ? -1 : chains.of[t.branch]!);
		const landsInside = (chain: number) =>
			this.#meteredChains(chains).has(chain) ||
			terms.some((t) => [t.a, t.b].some((node) => t.branch < 0 && node >= 0 && chains.nodeOf[node] === chain));
		return terms.map((term) => {
			const chain = chainOf(term);
			if (chain < 0 || term.before === 0 || term.emf !== 0 || emf[term.branch] !== 0) return term;
			const worked = chains.largest[chain]!;
			// Worth it only where the true branch is small beside the chain.
			if (worked === term.branch || term.before < 10 * siemens[worked]!) return term;
			if (terms.some((t) => t !== term && chainOf(t) === chain) || landsInside(chain)) return term;
			const before = siemens[worked]!;
			const ohms = term.after === 0 ? Number.POSITIVE_INFINITY : 1 / term.after - 1 / term.before;
			const after = term.after === 0 ? 0 : 1 / (1 / before + ohms);
			const { a, b } = circuit.branches[worked]!;
			const at = chains.at[worked]!;
			const own = chains.at[term.branch]!;
			// Nodes are numbered along the chain; the worked branch's near end is the one towards the true branch.
			const near = a >= 0 && chains.nodeOf[a] === chain && chains.nodeAt[a] === (at < own ? at : at - 1) ? a : b;
			const source = this.#dead ? 0 : emf[worked]!;
			const shift: Shift = {
				chain,
				from: Math.min(at, own),
				to: Math.max(at, own),
				ohms,
				near,
				far: near === a ? b : a,
				emf: near === a ? source : -source,
			};
			const dg = after - before;
			return { a, b, dg, dh: dg * source, branch: worked, before, after, emf: source, shift };
		});
	}

	/** Chains into which an ohmmeter pushes its own current: they are no longer one current's way. */
	#meteredChains(chains: Chains): ReadonlySet<number> {
		if (this.#metered === undefined) {
			const ends = this.#probes.flatMap((p) => (p.kind === "ohms" ? [p.a, p.b] : []));
			this.#metered = new Set(ends.filter((node) => node >= 0).map((node) => chains.nodeOf[node]!));
			this.#metered.delete(-1);
		}
		return this.#metered;
	}

	/** Which parts the change separates or joins: none, one at a bridge, or more than can be said cheaply. */
	#cut(terms: readonly Term[]): { bridge: number } | "several" {
		let opened = -1;
		for (const term of terms) {
			if (term.before === 0 && term.after > 0) {
				const found = this.#point.components;
				if (componentOf(found, term.a) !== componentOf(found, term.b)) return "several";
				// A new way round may mend what another change opens.
				if (terms.some((t) => t.after === 0 && t.before > 0)) return "several";
			} else if (term.before > 0 && term.after === 0) {
				if (opened >= 0) return "several";
				opened = term.branch;
			}
		}
		if (opened < 0) return { bridge: -1 };
		this.#bridges ??= findBridges(this.#point.circuit, this.#point.siemens);
		return { bridge: this.#bridges.is[opened] === 1 ? opened : -1 };
	}

	/** c = dh - y, (I + D S) y = D u. */
	#corrections(terms: readonly Term[]): { c: Float64Array; s: Float64Array } | undefined {
		const k = terms.length;
		const s = this.#between(terms);
		const m = new Float64Array(k * k);
		const y = new Float64Array(k);
		for (let i = 0; i < k; i++) {
			const term = terms[i]!;
			let u = across(this.#point.volts, term);
			for (let j = 0; j < k; j++) {
				u += s[i * k + j]! * terms[j]!.dh;
				m[i * k + j] = term.dg * s[i * k + j]! + (i === j ? 1 : 0);
			}
			y[i] = term.dg * u;
		}
		if (solveSmall(m, y, k) === undefined) return undefined;
		return { c: Float64Array.from(terms, (term, i) => term.dh - y[i]!), s };
	}

	/** S = B'A^-1 B, ohms between the changed conductors. */
	#between(terms: readonly Term[]): Float64Array {
		const k = terms.length;
		const s = new Float64Array(k * k);
		if (k === 1) {
			const own = this.#ownOhms(terms[0]!);
			if (!Number.isNaN(own)) {
				s[0] = own;
				return s;
			}
		}
		terms.forEach((term, j) => {
			const z = column(this.#point.numeric, term);
			for (let i = 0; i < k; i++) s[i * k + j] = across(z, terms[i]!);
		});
		return s;
	}

	/** b'A^-1 b from the selected inverse; NaN where its nodes are no neighbours. */
	#ownOhms(term: Term): number {
		this.#inverse ??= selectedInverse(this.#point.numeric);
		const { a, b } = term;
		const { diagonal } = this.#inverse;
		if (a < 0) return b < 0 ? 0 : diagonal[b]!;
		if (b < 0) return diagonal[a]!;
		return diagonal[a]! + diagonal[b]! - 2 * this.#inverse.at(a, b);
	}

	#row(a: number, b: number): Float64Array {
		const key = `${a},${b}`;
		let at = this.#rowOf.get(key);
		if (at === undefined) {
			at = this.#rows.push({ a, b, y: column(this.#point.numeric, { a, b }) }) - 1;
			this.#rowOf.set(key, at);
		}
		return this.#rows[at]!.y;
	}

	#difference(a: number, b: number, terms: readonly Term[], c: Float64Array): number {
		let v = 0;
		let from = a;
		let to = b;
		for (const term of terms) {
			const { shift } = term;
			if (shift === undefined) continue;
			// A point between the true and the worked branch of an opened chain hangs on the far end instead; of a
			// chain with resistance added it lies the added drop lower.
			const amps = shift.ohms === Number.POSITIVE_INFINITY ? 0 : this.#plain(shift.near, shift.far, terms, c);
			const drop = amps === 0 ? 0 : term.after * (amps - shift.emf) * shift.ohms;
			if (this.#inside(shift, a)) {
				if (shift.ohms === Number.POSITIVE_INFINITY) {
					from = shift.far;
					v += shift.emf;
				} else v -= drop;
			}
			if (this.#inside(shift, b)) {
				if (shift.ohms === Number.POSITIVE_INFINITY) {
					to = shift.far;
					v -= shift.emf;
				} else v += drop;
			}
		}
		return v + this.#plain(from, to, terms, c);
	}

	#inside(shift: Shift, node: number): boolean {
		if (node < 0 || this.#chains!.nodeOf[node] !== shift.chain) return false;
		const at = this.#chains!.nodeAt[node]!;
		return at >= shift.from && at < shift.to;
	}

	#plain(a: number, b: number, terms: readonly Term[], c: Float64Array): number {
		if (a === b) return 0;
		const y = this.#row(a, b);
		let v = voltsAt(this.#point.volts, a) - voltsAt(this.#point.volts, b);
		for (let k = 0; k < terms.length; k++) v += c[k]! * across(y, terms[k]!);
		return v;
	}

	#result(
		terms: readonly Term[],
		moving: readonly Term[],
		solution: { c: Float64Array; s: Float64Array },
		cut: { bridge: number },
		states: Uint8Array,
	): Evaluated {
		const values = new Float64Array(this.#probes.length);
		this.#probes.forEach((probe, p) => {
			if (probe.kind === "amps") values[p] = this.#amps(probe.branches, terms, moving, solution.c);
			else if (probe.a === probe.b) values[p] = 0;
			else if (this.#open(probe.a, probe.b, cut.bridge)) values[p] = Number.NaN;
			else if (probe.kind === "volts") values[p] = this.#difference(probe.a, probe.b, moving, solution.c);
			else values[p] = this.#ohms(probe.a, probe.b, this.values[p]!, moving, solution.s);
		});
		return { values, path: moving.length === 0 ? "kept" : "low rank", states };
	}

	#open(a: number, b: number, bridge: number): boolean {
		if (separated(this.#point, a, b)) return true;
		return bridge >= 0 && this.#bridges!.separates(bridge, a, b);
	}

	#amps(
		branches: readonly { branch: number; sign: 1 | -1 }[],
		terms: readonly Term[],
		moving: readonly Term[],
		c: Float64Array,
	): number {
		const { circuit, siemens, emf } = this.#point;
		let sum = 0;
		for (const { branch, sign } of branches) {
			const changed = terms.find((t) => t.branch === branch);
			const g = changed ? changed.after : siemens[branch]!;
			if (g === 0) continue;
			const { a, b } = circuit.branches[branch]!;
			sum += sign * g * (this.#difference(a, b, moving, c) - (changed ? changed.emf : emf[branch]!));
		}
		return sum;
	}

	/** w'(A + B D B')^-1 w from w'A^-1 w. */
	#ohms(a: number, b: number, before: number, terms: readonly Term[], s: Float64Array): number {
		const k = terms.length;
		if (k === 0) return before;
		const y = this.#row(a, b);
		const along = terms.map((term) => across(y, term));
		const m = new Float64Array(k * k);
		const r = new Float64Array(k);
		for (let i = 0; i < k; i++) {
			r[i] = terms[i]!.dg * along[i]!;
			for (let j = 0; j < k; j++) m[i * k + j] = terms[i]!.dg * s[i * k + j]! + (i === j ? 1 : 0);
		}
		solveSmall(m, r, k);
		let ohms = before;
		for (let i = 0; i < k; i++) ohms -= along[i]! * r[i]!;
		return ohms;
	}
}

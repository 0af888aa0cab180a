/**
 * Ohms between changed conductors at a kept point, S = B'A^-1 B: from the selected inverse where that keeps the
 * digits, else by solves that touch only the tree paths of the conductors.
 */
import { type SelectedInverse, selectedInverse, solveSparseAt } from "@loomwright/linalg";
import type { Topology } from "./circuit.js";
import { column, type Ends, nodesOf, ownOhms, weightsOf } from "./incidence.js";
import type { Operating } from "./operating.js";
import { NO_NUMBERS, type Numbers } from "./solution.js";
import type { Term } from "./term.js";

/** Share of a difference below which it is computed another way. */
const CANCELLED = 1e-3;
/** Solves of single conductors that cost about as much as the selected inverse. */
const WORTH_INVERSE = 100;
/** Siemens from which on a source is the car's supply. */
const STRONG = 10;

export class OwnOhms {
	readonly #point: Operating<Topology>;
	#inverse: SelectedInverse | undefined;
	/** Single conductors still to be answered by a solve each. */
	#few: number;
	/** By branch, NaN until asked for: what the selected inverse says, and what a solve says. */
	readonly #near: Float64Array;
	readonly #exact: Float64Array;
	/** Columns of the supply's points against the reference, found when needed. */
	readonly #hubs: Map<number, Float64Array | undefined>;
	/** Number of each node among the ends of the branches that automata switch, -1 for others. */
	readonly #slot: Int32Array;
	/** The nodes that have a slot. */
	readonly #slots: Int32Array;
	/** By branch. */
	readonly #switched = new Map<number, Float64Array>();

	/** @param many many conductors will be asked about: the inverse is made at the first */
	constructor(point: Operating<Topology>, many: boolean) {
		this.#point = point;
		this.#few = many ? 0 : WORTH_INVERSE;
		const count = point.circuit.branches.length;
		this.#hubs = hubsOf(point);
		this.#slot = new Int32Array(point.circuit.nodes.length).fill(-1);
		const slots: number[] = [];
		for (const automaton of point.standing.automata)
			for (const branch of automaton.branches) {
				const { a, b } = point.circuit.branches[branch]!;
				for (const node of [a, b])
					if (node >= 0 && this.#slot[node] === -1) this.#slot[node] = slots.push(node) - 1;
			}
		this.#slots = Int32Array.from(slots);
		this.#near = new Float64Array(count).fill(Number.NaN);
		this.#exact = new Float64Array(count).fill(Number.NaN);
	}

	/** S of these changes, k x k by rows. */
	between(terms: readonly Term[]): Numbers {
		const k = terms.length;
		if (k === 0) return NO_NUMBERS;
		if (k === 1) return [this.#one(terms[0]!)];
		const s = new Float64Array(k * k);
		// What automata switch comes again with others; a change's own conductors come once.
		const once: number[] = [];
		const known: number[] = [];
		for (let j = 0; j < k; j++) (this.#isSwitched(terms[j]!) ? known : once).push(j);
		for (const j of known) {
			const z = this.#amongSwitched(terms[j]!);
			for (const i of known) s[i * k + j] = this.#acrossSwitched(z, terms[i]!);
		}
		if (once.length === 0) return s;
		const ends: number[] = [];
		for (const { a, b } of terms) ends.push(Math.max(a, 0), Math.max(b, 0));
		for (const j of once) {
			const z = solveSparseAt(this.#point.numeric, nodesOf(terms[j]!), weightsOf(terms[j]!), ends);
			for (let i = 0; i < k; i++) {
				const { a, b } = terms[i]!;
				const ohms = (a < 0 ? 0 : z[2 * i]!) - (b < 0 ? 0 : z[2 * i + 1]!);
				s[i * k + j] = ohms;
				s[j * k + i] = ohms;
			}
		}
		return s;
	}

	#isSwitched({ branch, a, b }: Term): boolean {
		return branch >= 0 && (a < 0 || this.#slot[a]! >= 0) && (b < 0 || this.#slot[b]! >= 0);
	}

	/** A^-1 b of a branch that automata switch, at the ends of all such branches. */
	#amongSwitched(term: Term): Float64Array {
		let z = this.#switched.get(term.branch);
		if (z === undefined) {
			const all = column(this.#point.numeric, term);
			const slots = this.#slots;
			z = new Float64Array(slots.length);
			for (let slot = 0; slot < slots.length; slot++) z[slot] = all[slots[slot]!]!;
			this.#switched.set(term.branch, z);
		}
		return z;
	}

	#acrossSwitched(z: Float64Array, { a, b }: Ends): number {
		return (a < 0 ? 0 : z[this.#slot[a]!]!) - (b < 0 ? 0 : z[this.#slot[b]!]!);
	}

	#one(term: Term): number {
		const { branch } = term;
		if (branch < 0) {
			const s = this.#byInverse(term);
			return Math.abs(1 + term.dg * s) < CANCELLED ? ownOhms(this.#point.numeric, term) : s;
		}
		let s = this.#near[branch]!;
		if (Number.isNaN(s)) {
			s = this.#byInverse(term);
			this.#near[branch] = s;
		}
		if (Math.abs(1 + term.dg * s) >= CANCELLED) return s;
		// What is left after cancelling is small: take the ohms by a solve, which loses no digits.
		s = this.#exact[branch]!;
		if (Number.isNaN(s)) {
			s = ownOhms(this.#point.numeric, term);
			this.#exact[branch] = s;
		}
		return s;
	}

	/** b'A^-1 b: from the selected inverse where its nodes are neighbours; the first few by a solve each. */
	#byInverse(ends: Ends): number {
		if (this.#inverse === undefined) {
			if (this.#few-- > 0) return ownOhms(this.#point.numeric, ends);
			this.#inverse = selectedInverse(this.#point.numeric);
		}
		const { a, b } = ends;
		const { diagonal } = this.#inverse;
		if (a < 0) return b < 0 ? 0 : diagonal[b]!;
		if (b < 0) return diagonal[a]!;
		const sum = diagonal[a]! + diagonal[b]!;
		const inside = this.#inverse.at(a, b);
		const between = Number.isNaN(inside) ? (this.#columnOf(b)?.[a] ?? this.#columnOf(a)?.[b]) : inside;
		const own = between === undefined ? 0 : sum - 2 * between;
		return own > CANCELLED * sum ? own : ownOhms(this.#point.numeric, ends);
	}

	/** Many links lead to a supply: its column serves them all. Undefined for other points. */
	#columnOf(node: number): Float64Array | undefined {
		if (!this.#hubs.has(node)) return undefined;
		let z = this.#hubs.get(node);
		if (z === undefined) {
			z = column(this.#point.numeric, { a: node, b: -1 });
			this.#hubs.set(node, z);
		}
		return z;
	}
}

/** The ends of the car's supply and the points next to them: what touches a supply is linked to one of these. */
function hubsOf({ circuit, siemens, standing }: Operating<Topology>): Map<number, Float64Array | undefined> {
	const hubs = new Map<number, Float64Array | undefined>();
	const put = (node: number) => {
		if (node >= 0) hubs.set(node, undefined);
	};
	circuit.branches.forEach(({ a, b }, k) => {
		if (standing.emf[k] === 0 || (siemens[k]! > 0 && siemens[k]! < STRONG)) return;
		put(a);
		put(b);
	});
	const ends = new Set(hubs.keys());
	for (const { a, b } of circuit.branches) {
		if (ends.has(a)) put(b);
		if (ends.has(b)) put(a);
	}
	return hubs;
}

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
/** Columns kept at once: of branches that change together, of points that many links lead to. */
const MOST_COLUMNS = 256;
/** A point asked for more often than this has its column kept. */
const SELDOM = 4;

export class OwnOhms {
	readonly #point: Operating<Topology>;
	readonly #inverse: SelectedInverse;
	/** By branch, NaN until asked for: what the selected inverse says, and what a solve says. */
	readonly #near: Float64Array;
	readonly #exact: Float64Array;
	/** By branch number, or by -1 - node for a node against the reference. */
	readonly #columns = new Map<number, Float64Array>();
	readonly #asked = new Map<number, number>();

	constructor(point: Operating<Topology>) {
		this.#point = point;
		this.#inverse = selectedInverse(point.numeric);
		const count = point.circuit.branches.length;
		this.#near = new Float64Array(count).fill(Number.NaN);
		this.#exact = new Float64Array(count).fill(Number.NaN);
	}

	/** S of these changes, k x k by rows. */
	between(terms: readonly Term[]): Numbers {
		const k = terms.length;
		if (k === 0) return NO_NUMBERS;
		if (k === 1) return [this.#one(terms[0]!)];
		const s = new Float64Array(k * k);
		for (let j = 0; j < k; j++) {
			const term = terms[j]!;
			// Branches come again with others, a part's hold with other links; a link comes once.
			const kept = term.branch >= 0 || term.before > 0 ? this.#kept(term) : undefined;
			const z = kept ?? solveSparseAt(this.#point.numeric, nodesOf(term), weightsOf(term), endsOf(terms));
			for (let i = 0; i < k; i++) {
				const { a, b } = terms[i]!;
				s[i * k + j] = (a < 0 ? 0 : z[kept ? a : 2 * i]!) - (b < 0 ? 0 : z[kept ? b : 2 * i + 1]!);
			}
		}
		return s;
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

	/** b'A^-1 b: from the selected inverse where its nodes are neighbours. */
	#byInverse(ends: Ends): number {
		const { a, b } = ends;
		const { diagonal } = this.#inverse;
		if (a < 0) return b < 0 ? 0 : diagonal[b]!;
		if (b < 0) return diagonal[a]!;
		const sum = diagonal[a]! + diagonal[b]!;
		const inside = this.#inverse.at(a, b);
		const between = Number.isNaN(inside) ? this.#columnOf(b)?.[a] : inside;
		const own = between === undefined ? 0 : sum - 2 * between;
		return own > CANCELLED * sum ? own : ownOhms(this.#point.numeric, ends);
	}

	/** Many links lead to one point (a supply): its column is kept and serves them all. */
	#columnOf(node: number): Float64Array | undefined {
		const asked = (this.#asked.get(node) ?? 0) + 1;
		this.#asked.set(node, asked);
		return asked > SELDOM ? this.#kept({ branch: -1, a: node, b: -1 }) : undefined;
	}

	#kept(ends: Ends & { readonly branch: number }): Float64Array {
		const key = ends.branch >= 0 ? ends.branch : -1 - ends.a;
		let z = this.#columns.get(key);
		if (z === undefined) {
			if (this.#columns.size >= MOST_COLUMNS) this.#columns.clear();
			z = column(this.#point.numeric, ends);
			this.#columns.set(key, z);
		}
		return z;
	}
}

/** Both nodes of every conductor, node 0 standing for the reference. */
function endsOf(terms: readonly Term[]): number[] {
	const nodes: number[] = [];
	for (const { a, b } of terms) nodes.push(Math.max(a, 0), Math.max(b, 0));
	return nodes;
}

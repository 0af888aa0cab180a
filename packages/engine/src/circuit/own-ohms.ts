/** Ohms between changed conductors at a kept point, S = B'A^-1 B. */
import { ConductorOhms } from "@loomwright/linalg";
import type { Topology } from "./circuit.js";
import type { Operating } from "./operating.js";
import { NO_NUMBERS, type Numbers } from "./solution.js";
import type { Term } from "./term.js";

export class OwnOhms {
	readonly #ohms: ConductorOhms;
	/** By branch, NaN until asked for: several changes of one conductor follow each other. */
	readonly #own: Float64Array;

	constructor({ numeric, circuit }: Operating<Topology>) {
		this.#ohms = new ConductorOhms(numeric);
		this.#own = new Float64Array(circuit.branches.length).fill(Number.NaN);
	}

	/** S of a single conductor. */
	of({ branch, a, b }: Term): number {
		if (branch < 0) return this.#ohms.own(a, b);
		const known = this.#own[branch]!;
		if (!Number.isNaN(known)) return known;
		const own = this.#ohms.own(a, b);
		this.#own[branch] = own;
		return own;
	}

	/** S of these changes, k x k by rows. */
	between(terms: readonly Term[]): Numbers {
		const k = terms.length;
		if (k === 0) return NO_NUMBERS;
		if (k === 1) return [this.of(terms[0]!)];
		const ends: number[] = [];
		for (let i = 0; i < k; i++) ends.push(terms[i]!.a, terms[i]!.b);
		return this.#ohms.among(ends);
	}
}

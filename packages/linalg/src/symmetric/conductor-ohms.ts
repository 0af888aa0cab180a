/**
 * Ohms of conductors and between them, S = B'A^-1 B with a 1 and a -1 in each column of B, from half a solve:
 * with y_i = L^-1 P b_i, S_ij = sum_k y_ik y_jk / d_k, and y_i lives on the tree paths of its two nodes alone.
 * No sum of its diagonal has a term below zero: what is left of nearly equal potentials is not a difference of them.
 * O(columns of the paths), for among() and conductors k^2 x path on top. Nothing is allocated for a single one.
 */
import { type Numeric, requireUsable } from "./factor.js";

export class ConductorOhms {
	readonly #numeric: Numeric;
	/** Entries of y of one conductor after another. */
	#places: Int32Array = new Int32Array(64);
	#entries: Float64Array = new Float64Array(64);

	constructor(numeric: Numeric) {
		this.#numeric = numeric;
	}

	/** b'A^-1 b in ohms of a conductor between two nodes, original numbering; a negative one is the reference. */
	own(a: number, b: number): number {
		const { pivots } = this.#numeric;
		const end = this.#forward(a, b, 0);
		const places = this.#places;
		const entries = this.#entries;
		let ohms = 0;
		for (let q = 0; q < end; q++) ohms += (entries[q] * entries[q]) / pivots[places[q]];
		return ohms;
	}

	/**
	 * S of several conductors.
	 * @param ends their nodes, two by two, as for `own`
	 * @returns k x k by rows
	 */
	among(ends: ArrayLike<number>): Float64Array {
		const k = ends.length >> 1;
		const s = new Float64Array(k * k);
		const starts = [0];
		for (let c = 0; c < k; c++) starts.push(this.#forward(ends[2 * c], ends[2 * c + 1], starts[c]));
		const { pivots, work } = this.#numeric;
		const places = this.#places;
		const entries = this.#entries;
		for (let c = 0; c < k; c++) {
			for (let q = starts[c]; q < starts[c + 1]; q++) work[places[q]] = entries[q] / pivots[places[q]];
			for (let r = c; r < k; r++) {
				let ohms = 0;
				for (let q = starts[r]; q < starts[r + 1]; q++) ohms += entries[q] * work[places[q]];
				s[c * k + r] = ohms;
				s[r * k + c] = ohms;
			}
			for (let q = starts[c]; q < starts[c + 1]; q++) work[places[q]] = 0;
		}
		return s;
	}

	/** Puts y of a conductor from `top` on; returns where the next begins. */
	#forward(a: number, b: number, top: number): number {
		requireUsable(this.#numeric);
		const { inverse, parent, lPtr, lRow } = this.#numeric.symbolic;
		const { lower, work } = this.#numeric;
		if (a === b) return top;
		let i = a < 0 ? -1 : inverse[a];
		let j = b < 0 ? -1 : inverse[b];
		if (i >= 0) work[i] = 1;
		if (j >= 0) work[j] = -1;
		let at = top;
		// Both paths upwards together, the lower position first: each column after those that it depends on.
		while (i >= 0 || j >= 0) {
			const k = j < 0 || (i >= 0 && i < j) ? i : j;
			if (i === k) i = parent[k];
			if (j === k) j = parent[k];
			const y = work[k];
			work[k] = 0;
			if (y === 0) continue;
			for (let p = lPtr[k], end = lPtr[k + 1]; p < end; p++) work[lRow[p]] -= lower[p] * y;
			if (at === this.#places.length) this.#grow();
			this.#places[at] = k;
			this.#entries[at++] = y;
		}
		return at;
	}

	#grow(): void {
		const places = new Int32Array(2 * this.#places.length);
		const entries = new Float64Array(2 * this.#entries.length);
		places.set(this.#places);
		entries.set(this.#entries);
		this.#places = places;
		this.#entries = entries;
	}
}

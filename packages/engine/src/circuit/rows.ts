/**
 * Adjoint rows y_w = A^-1 w of many node pairs w, kept node by node so that what one conductor does to all pairs
 * lies side by side in memory.
 */
import { type Numeric, solveMany } from "@loomwright/linalg";
import type { Ends } from "./incidence.js";

export class Rows {
	/** Number of pairs. */
	readonly count: number;
	/** Entry (node, pair) at node x count + pair, in ohms. */
	readonly #y: Float64Array;

	/** Cost: one solve per pair, all together. Memory: 8 bytes x nodes x pairs. */
	constructor(numeric: Numeric, nodes: number, pairs: readonly (readonly [number, number])[]) {
		const count = pairs.length;
		this.count = count;
		this.#y = new Float64Array(nodes * count);
		pairs.forEach(([a, b], pair) => {
			if (a === b) return;
			if (a >= 0) this.#y[a * count + pair] = 1;
			if (b >= 0) this.#y[b * count + pair] = -1;
		});
		solveMany(numeric, this.#y, count);
	}

	/** y_pair . b for a conductor from a to b. */
	along(pair: number, a: number, b: number): number {
		const { count } = this;
		return (a < 0 ? 0 : this.#y[a * count + pair]!) - (b < 0 ? 0 : this.#y[b * count + pair]!);
	}

	/** out[pair] = base[pair] + factor x (y_pair . b) for pairs from (inclusive) to (exclusive); out may be base. */
	add(out: Float64Array, base: Float64Array, factor: number, { a, b }: Ends, from: number, to: number): void {
		const { count } = this;
		const y = this.#y;
		const pa = a * count;
		const pb = b * count;
		if (a < 0) for (let p = from; p < to; p++) out[p] = base[p]! - factor * y[pb + p]!;
		else if (b < 0) for (let p = from; p < to; p++) out[p] = base[p]! + factor * y[pa + p]!;
		else for (let p = from; p < to; p++) out[p] = base[p]! + factor * (y[pa + p]! - y[pb + p]!);
	}

	/**
	 * Of one conductor of gain g, with z = y_pair . b: out[p] -= g z^2, and the error of that and of out over its
	 * rounding. Pair p stands in row first + p.
	 */
	metered(
		out: Float64Array,
		error: Float64Array,
		g: number,
		{ a, b }: Ends,
		first: number,
		from: number,
		to: number,
	): void {
		const y = this.#y;
		const pa = a < 0 ? -1 : a * this.count + first;
		const pb = b < 0 ? -1 : b * this.count + first;
		const most = 2 * Math.abs(g);
		for (let p = from; p < to; p++) {
			const ya = pa < 0 ? 0 : y[pa + p]!;
			const yb = pb < 0 ? 0 : y[pb + p]!;
			const z = ya - yb;
			const base = out[p]!;
			out[p] = base - g * z * z;
			error[p] = Math.abs(base) + most * Math.abs(z) * (Math.abs(ya) + Math.abs(yb) + 2 * Math.abs(z));
		}
	}
}

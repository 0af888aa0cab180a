/**
 * Adjoint rows y_w = A^-1 w of many node pairs w, kept node by node so that what one conductor does to all pairs
 * lies side by side in memory.
 */
import { type Numeric, solveSparse } from "@loomwright/linalg";

export class Rows {
	/** Number of pairs. */
	readonly count: number;
	/** Entry (node, pair) at node x count + pair, in ohms. */
	readonly #y: Float64Array;

	/** Cost: one sparse solve per pair. Memory: 8 bytes x nodes x pairs. */
	constructor(numeric: Numeric, nodes: number, pairs: readonly (readonly [number, number])[]) {
		const count = pairs.length;
		this.count = count;
		this.#y = new Float64Array(nodes * count);
		const x = new Float64Array(nodes);
		pairs.forEach(([a, b], pair) => {
			if (a === b) return;
			const at = a < 0 ? [b] : b < 0 ? [a] : [a, b];
			const values = a < 0 ? [-1] : b < 0 ? [1] : [1, -1];
			solveSparse(numeric, at, values, x);
			for (let i = 0, p = pair; i < nodes; i++, p += count) this.#y[p] = x[i]!;
		});
	}

	/** y_pair . b for a conductor from a to b. */
	along(pair: number, a: number, b: number): number {
		const { count } = this;
		return (a < 0 ? 0 : this.#y[a * count + pair]!) - (b < 0 ? 0 : this.#y[b * count + pair]!);
	}

	/** out[pair] += factor x (y_pair . b) for pairs from (inclusive) to (exclusive). */
	add(out: Float64Array, factor: number, a: number, b: number, from: number, to: number): void {
		const { count } = this;
		const y = this.#y;
		const pa = a * count;
		const pb = b * count;
		if (a < 0) for (let p = from; p < to; p++) out[p]! -= factor * y[pb + p]!;
		else if (b < 0) for (let p = from; p < to; p++) out[p]! += factor * y[pa + p]!;
		else for (let p = from; p < to; p++) out[p]! += factor * (y[pa + p]! - y[pb + p]!);
	}
}

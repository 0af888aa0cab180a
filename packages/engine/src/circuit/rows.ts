/**
 * Adjoint rows y_w = A^-1 w of many node pairs w, kept node by node so that what one conductor does to all pairs
 * lies side by side in memory, and nodes that hang together near each other. The first few conductors are answered by
 * a solve each, y_w . b = w . A^-1 b: a condition that few changes are followed through never pays for its rows.
 */
import { edgeColumns, type Numeric, solveMany } from "@loomwright/linalg";
import { column, type Ends } from "./incidence.js";
import type { Shelf } from "./shelf.js";

/** Solves after which the rows are worth making, against their number. */
const WORTH_ROWS = 0.5;

export class Rows {
	/** Number of pairs. */
	readonly count: number;
	readonly #numeric: Numeric;
	readonly #pairs: readonly (readonly [number, number])[];
	readonly #shelf: Shelf | undefined;
	/** Node's place in the elimination order. */
	readonly #place: Int32Array;
	/** Entry (place, pair) at place x count + pair, in ohms; made when worth it. */
	#made: Float64Array | undefined;
	/** Conductors answered by a solve each. */
	readonly #few: number;
	#solves = 0;

	/**
	 * Cost, once many conductors are asked about: one solve per pair, all together, and 8 bytes x nodes x pairs.
	 * @param shelf they will be: the rows are made at the first, in an array of it
	 */
	constructor(numeric: Numeric, pairs: readonly (readonly [number, number])[], shelf: Shelf | undefined) {
		this.count = pairs.length;
		this.#numeric = numeric;
		this.#place = numeric.symbolic.inverse;
		this.#pairs = pairs;
		this.#shelf = shelf;
		this.#few = shelf ? 0 : WORTH_ROWS * pairs.length;
	}

	/** True once conductors are no longer answered by a solve each. */
	get made(): boolean {
		return this.#made !== undefined;
	}

	get #y(): Float64Array {
		this.#made ??= this.#make();
		return this.#made;
	}

	#make(): Float64Array {
		const { count } = this;
		const size = this.#numeric.symbolic.n * count;
		const y = this.#shelf?.take(size) ?? new Float64Array(size);
		const columns = edgeColumns(
			this.#pairs.map(([a]) => a),
			this.#pairs.map(([, b]) => b),
		);
		return solveMany(this.#numeric, columns, y);
	}

	/** Where a node's row begins; of no use for the reference. */
	#row(node: number): number {
		return node < 0 ? 0 : this.#place[node]! * this.count;
	}

	/** y_pair . b for a conductor from a to b. */
	along(pair: number, a: number, b: number): number {
		return (a < 0 ? 0 : this.#y[this.#row(a) + pair]!) - (b < 0 ? 0 : this.#y[this.#row(b) + pair]!);
	}

	/**
	 * out[pair + offset] = base[pair] + factor x (y_pair . b) for pairs from (inclusive) to (exclusive).
	 * @param base undefined: what stands in `out`
	 */
	add(
		out: Float64Array,
		offset: number,
		base: Float64Array | undefined,
		factor: number,
		ends: Ends,
		from: number,
		to: number,
	): void {
		const added = base ?? out;
		const shift = base === undefined ? offset : 0;
		if (this.#made === undefined && this.#solves < this.#few) {
			this.#addOnce(out, offset, added, shift, factor, ends, from, to);
			return;
		}
		const { a, b } = ends;
		const y = this.#y;
		const pa = this.#row(a);
		const pb = this.#row(b);
		if (a < 0) for (let p = from; p < to; p++) out[p + offset] = added[p + shift]! - factor * y[pb + p]!;
		else if (b < 0) for (let p = from; p < to; p++) out[p + offset] = added[p + shift]! + factor * y[pa + p]!;
		else
			for (let p = from; p < to; p++)
				out[p + offset] = added[p + shift]! + factor * (y[pa + p]! - y[pb + p]!);
	}

	#addOnce(
		out: Float64Array,
		offset: number,
		added: Float64Array,
		shift: number,
		factor: number,
		ends: Ends,
		from: number,
		to: number,
	): void {
		this.#solves++;
		const z = column(this.#numeric, ends);
		for (let p = from; p < to; p++) {
			const [a, b] = this.#pairs[p]!;
			out[p + offset] = added[p + shift]! + factor * ((a < 0 ? 0 : z[a]!) - (b < 0 ? 0 : z[b]!));
		}
	}

	/** Largest sharpness[pair] x |y_pair . b| of the first pairs. */
	peak({ a, b }: Ends, sharpness: Float64Array): number {
		const y = this.#y;
		const pa = this.#row(a);
		const pb = this.#row(b);
		let most = 0;
		for (let p = 0; p < sharpness.length; p++) {
			const along = (a < 0 ? 0 : y[pa + p]!) - (b < 0 ? 0 : y[pb + p]!);
			const moved = sharpness[p]! * Math.abs(along);
			if (moved > most) most = moved;
		}
		return most;
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
		const pa = a < 0 ? -1 : this.#row(a) + first;
		const pb = b < 0 ? -1 : this.#row(b) + first;
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

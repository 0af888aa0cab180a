/**
 * A kept factor with a few entries changed for a while: the columns on the tree paths are computed anew as by
 * `refactorPart`, solved with, and the old ones copied back.
 *
 * The last columns belong to points that hundreds of others hang on (the body metal's neighbours, a supply). What those
 * send there is kept as sums over groups of them, so a change gathers only the groups it touches. Sums of terms of one
 * sign: with row sums given nothing cancels in them either.
 * O(sum over the paths of the columns each step gathers, a group being one).
 */
import {
	type FactorResult,
	finishColumn,
	gather,
	type Numeric,
	report,
	requireUsable,
	startColumn,
} from "./factor.js";
import { put, stepsOf } from "./refactor-part.js";
import type { Symbolic } from "./symbolic.js";

/** Columns in a group; a row with fewer than two groups is gathered one by one. */
const GROUP = 24;

/** y = L^-1 P b of the unchanged factor in elimination order, and what it sends from each group. */
export interface KeptForward {
	readonly y: Float64Array;
	readonly sums: Float64Array;
}

/** Groups of the columns that a row of L has entries in. */
interface Groups {
	/** By row: its first group; -1 where it has none. Those of a row follow each other up to those of the next. */
	readonly first: Int32Array;
	readonly last: Int32Array;
	/** By group: its entries in the rows of L, from (inclusive) to (exclusive). */
	readonly from: Int32Array;
	readonly to: Int32Array;
	/** By entry of L (column by column): its group, or -1. */
	readonly of: Int32Array;
	/** By group: where its sums begin, that of the carried row sum and then one for each entry of the row's own column. */
	readonly at: Int32Array;
	readonly size: number;
}

export class Patch {
	readonly #numeric: Numeric;
	readonly #groups: Groups;
	/** Of the unchanged factor; made at the first change. */
	#sums: Float64Array | undefined;
	/** By group: the last change that touched it. */
	readonly #touched: Int32Array;
	#now = 0;
	#steps: readonly number[] = [];
	/** The old columns. */
	#kept = new Float64Array(256);

	/** @throws RangeError for a factor made without row sums */
	constructor(numeric: Numeric) {
		if (numeric.rowSums === null) throw new RangeError("this factor was made without row sums");
		this.#numeric = numeric;
		this.#groups = groupsOf(numeric.symbolic);
		this.#touched = new Int32Array(this.#groups.from.length);
	}

	/**
	 * Does work on the factor of the changed matrix. One change at a time.
	 *
	 * @param entries places in the pattern's values; `values` their new values
	 * @param nodes original indices whose row sum is given anew in `sums`
	 * @param work gets what `refactor` returns
	 * @throws RangeError as `refactorPart`
	 */
	during<T>(
		entries: readonly number[],
		values: readonly number[],
		nodes: readonly number[],
		sums: readonly number[],
		work: (result: FactorResult) => T,
	): T {
		const numeric = this.#numeric;
		requireUsable(numeric);
		this.#sums ??= this.#sumsOf();
		const steps = stepsOf(numeric, entries, values, nodes, sums);
		this.#steps = steps;
		this.#keep(steps);
		const before = entries.map((s) => numeric.values[s]);
		const sumsBefore = nodes.map((node) => numeric.rowSums![node]);
		put(numeric, entries, values, nodes, sums);
		try {
			return work(report(numeric, this.#eliminate(steps)));
		} finally {
			put(numeric, entries, before, nodes, sumsBefore);
			this.#restore(steps);
			numeric.usable = true;
		}
	}

	/** For {@link solve}, from b of length n in original numbering. Asked outside of `during`. */
	forward(b: Float64Array): KeptForward {
		const numeric = this.#numeric;
		const { n, perm, lPtr, lRow, rowPos, rowCol } = numeric.symbolic;
		const { lower } = numeric;
		if (b.length !== n) throw new RangeError(`right-hand side has ${b.length} entries, expected ${n}`);
		requireUsable(numeric);
		const y = Float64Array.from(perm, (node) => b[node]);
		for (let j = 0; j < n; j++)
			for (let p = lPtr[j], end = lPtr[j + 1]; p < end; p++) y[lRow[p]] -= lower[p] * y[j];
		const { from, to } = this.#groups;
		const sums = new Float64Array(from.length);
		for (let g = 0; g < from.length; g++)
			for (let q = from[g]; q < to[g]; q++) sums[g] += lower[rowPos[q]] * y[rowCol[q]];
		return { y, sums };
	}

	/**
	 * Entries of x = A^-1 b of the changed matrix, inside `during`.
	 *
	 * @param kept of the unchanged one, of a b that may differ from this one at nodes that the change names
	 * @param b length n, original numbering
	 * @param wanted positions of the entries to find, as `withAncestors` gives them
	 * @param out length n, in elimination order: x at `wanted`, nothing of use elsewhere
	 */
	solve(kept: KeptForward, b: Float64Array, wanted: Int32Array, out: Float64Array): void {
		const { perm, rowPtr, rowCol, rowPos, lPtr, lRow } = this.#numeric.symbolic;
		const { lower, pivots } = this.#numeric;
		requireUsable(this.#numeric);
		const { first, last, from, to } = this.#groups;
		const touched = this.#touched;
		const now = this.#now;
		out.set(kept.y);
		for (let s = 0; s < this.#steps.length; s++) {
			const k = this.#steps[s];
			let y = b[perm[k]];
			const hub = first[k];
			if (hub < 0)
				for (let q = rowPtr[k], end = rowPtr[k + 1]; q < end; q++) y -= lower[rowPos[q]] * out[rowCol[q]];
			else
				for (let g = hub; g < last[k]; g++)
					if (touched[g] !== now) y -= kept.sums[g];
					else for (let q = from[g], end = to[g]; q < end; q++) y -= lower[rowPos[q]] * out[rowCol[q]];
			out[k] = y;
		}
		for (let w = 0; w < wanted.length; w++) {
			const j = wanted[w];
			let x = out[j] / pivots[j];
			for (let p = lPtr[j], end = lPtr[j + 1]; p < end; p++) x -= lower[p] * out[lRow[p]];
			out[j] = x;
		}
	}

	/** As `eliminate`, group by group; returns the failing step, or -1. */
	#eliminate(steps: readonly number[]): number {
		const numeric = this.#numeric;
		const { lPtr, lRow, rowPtr } = numeric.symbolic;
		const { carried, work } = numeric;
		const { first, last, from, to, of, at } = this.#groups;
		const sums = this.#sums!;
		const touched = this.#touched;
		const now = ++this.#now;
		for (let t = 0; t < steps.length; t++) {
			const k = steps[t];
			const end = lPtr[k + 1];
			startColumn(numeric, k);
			const hub = first[k];
			if (hub < 0) gather(numeric, k, rowPtr[k], rowPtr[k + 1]);
			else
				for (let g = hub; g < last[k]; g++) {
					if (touched[g] === now) {
						gather(numeric, k, from[g], to[g]);
						continue;
					}
					let sum = at[g];
					carried[k] -= sums[sum++];
					for (let p = lPtr[k]; p < end; p++) work[lRow[p]] -= sums[sum++];
				}
			if (!finishColumn(numeric, k)) return k;
			for (let p = lPtr[k]; p < end; p++) if (of[p] >= 0) touched[of[p]] = now;
		}
		return -1;
	}

	#sumsOf(): Float64Array {
		const { n, lPtr, lRow } = this.#numeric.symbolic;
		const { carried, pivots, work } = this.#numeric;
		const { first, last, from, to, at, size } = this.#groups;
		const sums = new Float64Array(size);
		for (let k = 0; k < n; k++) {
			if (first[k] < 0) continue;
			const own = carried[k];
			const pivot = pivots[k];
			for (let g = first[k]; g < last[k]; g++) {
				carried[k] = 0;
				gather(this.#numeric, k, from[g], to[g]);
				let sum = at[g];
				sums[sum++] = -carried[k];
				for (let p = lPtr[k]; p < lPtr[k + 1]; p++) {
					sums[sum++] = -work[lRow[p]];
					work[lRow[p]] = 0;
				}
			}
			carried[k] = own;
			pivots[k] = pivot;
		}
		return sums;
	}

	#keep(steps: readonly number[]): void {
		const { lPtr } = this.#numeric.symbolic;
		const { lower, pivots, carried } = this.#numeric;
		let size = 0;
		for (let s = 0; s < steps.length; s++) size += lPtr[steps[s] + 1] - lPtr[steps[s]] + 2;
		if (size > this.#kept.length) this.#kept = new Float64Array(2 * size);
		const kept = this.#kept;
		let top = 0;
		for (let s = 0; s < steps.length; s++) {
			const j = steps[s];
			kept[top++] = pivots[j];
			kept[top++] = carried[j];
			for (let p = lPtr[j]; p < lPtr[j + 1]; p++) kept[top++] = lower[p];
		}
	}

	#restore(steps: readonly number[]): void {
		const { lPtr } = this.#numeric.symbolic;
		const { lower, pivots, carried } = this.#numeric;
		const kept = this.#kept;
		let top = 0;
		for (let s = 0; s < steps.length; s++) {
			const j = steps[s];
			pivots[j] = kept[top++];
			carried[j] = kept[top++];
			for (let p = lPtr[j]; p < lPtr[j + 1]; p++) lower[p] = kept[top++];
		}
	}
}

/** Positions of the given nodes and their ancestors in the elimination tree, each after its own ancestors. */
export function withAncestors({ n, inverse, parent }: Symbolic, nodes: Iterable<number>): Int32Array {
	const wanted = new Uint8Array(n);
	for (const node of nodes)
		for (let j = inverse[node]; j !== -1 && wanted[j] === 0; j = parent[j]) wanted[j] = 1;
	return Int32Array.from(wanted.keys())
		.filter((j) => wanted[j] === 1)
		.reverse();
}

function groupsOf({ n, rowPtr, rowPos, lPtr }: Symbolic): Groups {
	const first = new Int32Array(n).fill(-1);
	const last = new Int32Array(n);
	const of = new Int32Array(lPtr[n]).fill(-1);
	const from: number[] = [];
	const to: number[] = [];
	const at: number[] = [];
	let size = 0;
	for (let k = 0; k < n; k++) {
		const end = rowPtr[k + 1];
		if (end - rowPtr[k] < 2 * GROUP) continue;
		first[k] = from.length;
		for (let begin = rowPtr[k]; begin < end; begin += GROUP) {
			const stop = Math.min(begin + GROUP, end);
			for (let q = begin; q < stop; q++) of[rowPos[q]] = from.length;
			from.push(begin);
			to.push(stop);
			at.push(size);
			size += 1 + lPtr[k + 1] - lPtr[k];
		}
		last[k] = from.length;
	}
	return {
		first,
		last,
		from: Int32Array.from(from),
		to: Int32Array.from(to),
		of,
		at: Int32Array.from(at),
		size,
	};
}

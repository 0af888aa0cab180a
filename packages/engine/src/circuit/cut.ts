/** What a change of conductors separates and joins: said by bridges and components, never by a small pivot. */
import { type Bridges, findBridges } from "./bridges.js";
import type { Topology } from "./circuit.js";
import { type Components, componentOf } from "./components.js";
import type { Operating } from "./operating.js";
import { TETHER } from "./solver.js";
import { hold, type Term } from "./term.js";
import type { Part } from "./ties.js";

export interface Cut {
	/** Bridges opened: they carry no current, so they are taken out of the correction. */
	readonly bridges: readonly number[];
	/** Components that a closing joins to another, by number. */
	readonly merged: ReadonlyMap<number, number>;
	/** Tethers that became superfluous. */
	readonly tethers: readonly Term[];
	/** Parts that only several openings together cut off. */
	readonly loose: readonly Part[];
}

const WHOLE: Cut = { bridges: [], merged: new Map(), tethers: [], loose: [] };

/** Node pairs by whose openness a meter shows 'open'. */
type Pairs = readonly (readonly [number, number])[];

export class Cuts {
	readonly #point: Operating<Topology>;
	readonly #parts: Components;
	#bridges: Bridges | undefined;
	/** Component of either end of each pair. */
	readonly #partA: Int32Array;
	readonly #partB: Int32Array;
	/** Places of the pairs' ends among the bridges; found when first needed. */
	#placeA: Int32Array | undefined;
	#placeB = new Int32Array(0);
	/** Pairs open without any change. */
	readonly #openAtRest: readonly number[];

	constructor(
		point: Operating<Topology>,
		readonly pairs: Pairs,
	) {
		this.#point = point;
		this.#parts = point.components;
		this.#partA = Int32Array.from(pairs, ([a]) => componentOf(point.components, a));
		this.#partB = Int32Array.from(pairs, ([, b]) => componentOf(point.components, b));
		this.#openAtRest = pairs.flatMap((_, p) => (this.#partA[p] === this.#partB[p] ? [] : [p]));
	}

	/** What these changes do; undefined where that cannot be said cheaply. */
	of(terms: readonly Term[]): Cut | undefined {
		let merged: Map<number, number> | undefined;
		let bridges: number[] | undefined;
		for (const term of terms) {
			if (term.before === 0 && term.after > 0) {
				const one = componentOf(this.#parts, term.a);
				const two = componentOf(this.#parts, term.b);
				if (one === two) continue;
				merged ??= new Map();
				// Two parts through a third: leave it to the full solve.
				if (merged.has(one) || merged.has(two)) return undefined;
				merged.set(Math.max(one, two), Math.min(one, two));
			} else if (term.before > 0 && term.after === 0 && this.#known().is[term.branch] === 1) {
				bridges ??= [];
				bridges.push(term.branch);
			}
		}
		if (merged === undefined) {
			if (bridges === undefined) return WHOLE;
			// A new way round an opened bridge makes it a branch like others.
			return this.#goneRound(bridges, terms) ? WHOLE : { ...WHOLE, bridges };
		}
		// A part that is joined may hang on a part that a bridge cuts off, or join through a third.
		if (bridges !== undefined) return undefined;
		for (const into of merged.values()) if (into !== 0 && merged.has(into)) return undefined;
		return {
			bridges: [],
			merged,
			loose: [],
			tethers: [...merged.keys()].map((part) => hold(this.#parts.first[part]!, -TETHER)),
		};
	}

	/** True where something closes between the two sides of an opened bridge. */
	#goneRound(bridges: readonly number[], terms: readonly Term[]): boolean {
		for (const { before, after, a, b } of terms)
			if (before === 0 && after > 0)
				for (const bridge of bridges) if (this.#known().separates(bridge, a, b)) return true;
		return false;
	}

	/** True where the change leaves no conducting way between two nodes. */
	open(a: number, b: number, { merged, bridges, loose }: Cut): boolean {
		const one = componentOf(this.#parts, a);
		const two = componentOf(this.#parts, b);
		if ((merged.get(one) ?? one) !== (merged.get(two) ?? two)) return true;
		for (const bridge of bridges) if (this.#known().separates(bridge, a, b)) return true;
		for (const part of loose) if (part.has(a) !== part.has(b)) return true;
		return false;
	}

	/** Writes NaN at `first` + number of each pair that is open under the change. */
	mark(values: Float64Array, first: number, { merged, bridges, loose }: Cut): void {
		if (merged.size === 0) for (const p of this.#openAtRest) values[first + p] = Number.NaN;
		else
			for (const p of this.#openAtRest) {
				const one = this.#partA[p]!;
				const two = this.#partB[p]!;
				if ((merged.get(one) ?? one) !== (merged.get(two) ?? two)) values[first + p] = Number.NaN;
			}
		if (bridges.length > 0) this.#placeA ??= this.#places();
		for (const bridge of bridges) {
			const [from, to] = this.#known().cutOff(bridge);
			const a = this.#placeA!;
			const b = this.#placeB;
			for (let p = 0; p < a.length; p++)
				if ((a[p]! >= from && a[p]! < to) !== (b[p]! >= from && b[p]! < to)) values[first + p] = Number.NaN;
		}
		for (const part of loose)
			for (let p = 0; p < this.pairs.length; p++) {
				const pair = this.pairs[p]!;
				if (part.has(pair[0]) !== part.has(pair[1])) values[first + p] = Number.NaN;
			}
	}

	/** Finds where the pairs' ends lie in the search for bridges; returns those of the first ends. */
	#places(): Int32Array {
		const known = this.#known();
		this.#placeB = Int32Array.from(this.pairs, ([, b]) => known.place(b));
		return Int32Array.from(this.pairs, ([a]) => known.place(a));
	}

	#known(): Bridges {
		this.#bridges ??= findBridges(this.#point.circuit, this.#point.siemens);
		return this.#bridges;
	}
}

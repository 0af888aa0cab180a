/**
 * A kept factor with a few branches changed for a while: only the columns on their tree paths are computed again, no
 * digit is lost, and putting the values back gives the same bits.
 *
 * For changes whose low-rank correction would cancel: a milliohm pin that opens and leaves a star of sensors hanging
 * on megohms has no chain along which the change could be moved.
 */
import { refactorPart, solve } from "@loomwright/linalg";
import type { Topology } from "./circuit.js";
import { type Operating, sources } from "./operating.js";
import { ownOhms } from "./rank-one.js";
import { TETHER } from "./solver.js";
import type { Term } from "./term.js";

/** Branches side by side on one entry of the matrix, or from one node to the reference. */
type Beside = ReadonlyMap<number, readonly number[]>;

export class Refactored {
	readonly #point: Operating<Topology>;
	#places:
		| { readonly entries: Beside; readonly sums: Beside; readonly held: ReadonlySet<number> }
		| undefined;

	constructor(point: Operating<Topology>) {
		this.#point = point;
	}

	/** All potentials under these changes; undefined where they leave a part without a way to the reference. */
	potentials(terms: readonly Term[]): Float64Array | undefined {
		const emf = this.#point.emf.slice();
		for (const term of terms) emf[term.branch] = term.emf;
		const { circuit, numeric } = this.#point;
		return this.#during(terms, (siemens) => solve(numeric, sources(circuit, siemens, emf)));
	}

	/** Ohms between the ends of each pair; undefined as for `potentials`. */
	ohms(terms: readonly Term[], pairs: readonly (readonly [number, number])[]): Float64Array | undefined {
		const { numeric } = this.#point;
		return this.#during(terms, () =>
			Float64Array.from(pairs, ([a, b]) => (a === b ? 0 : ownOhms(numeric, { a, b }))),
		);
	}

	/**
	 * dg / (1 + dg s) for a change of one branch, s = b'A^-1 b, as dg - dg s' dg with s' of the changed factor: A^-1
	 * less A^-1 b times this times b'A^-1 is A'^-1. For an opening nothing cancels in it. Undefined as for `potentials`.
	 */
	gain(term: Term): number | undefined {
		const { dg } = term;
		return this.#during([term], () => dg - dg * ownOhms(this.#point.numeric, term) * dg);
	}

	/** Does work on the changed factor and puts the factor back. */
	#during<T>(terms: readonly Term[], work: (siemens: Float64Array) => T): T | undefined {
		const { circuit, numeric } = this.#point;
		const siemens = this.#point.siemens.slice();
		for (const term of terms) siemens[term.branch] = term.after;
		this.#places ??= placesOf(this.#point);
		const { entries, sums, held } = this.#places;
		const places = new Set<number>();
		const nodes = new Set<number>();
		for (const { branch, a, b } of terms) {
			const place = circuit.pattern.edge[branch]!;
			if (place >= 0) places.add(place);
			else if (a !== b) nodes.add(Math.max(a, b));
		}
		const total = (list: readonly number[]) => list.reduce((sum, k) => sum + siemens[k]!, 0);
		const values = [...places].map((place) => -total(entries.get(place)!));
		const rowSums = [...nodes].map((node) => total(sums.get(node)!) + (held.has(node) ? TETHER : 0));
		const oldValues = [...places].map((place) => numeric.values[place]!);
		const oldSums = [...nodes].map((node) => numeric.rowSums![node]!);
		try {
			const done = refactorPart(numeric, [...places], values, [...nodes], rowSums);
			return done.ok ? work(siemens) : undefined;
		} finally {
			refactorPart(numeric, [...places], oldValues, [...nodes], oldSums);
		}
	}
}

function placesOf({ circuit, components: found }: Operating<Topology>) {
	const entries = new Map<number, number[]>();
	const sums = new Map<number, number[]>();
	const put = (map: Map<number, number[]>, key: number, k: number) => {
		const list = map.get(key);
		if (list) list.push(k);
		else map.set(key, [k]);
	};
	circuit.branches.forEach(({ a, b }, k) => {
		const place = circuit.pattern.edge[k]!;
		if (place >= 0) put(entries, place, k);
		else if (a !== b) put(sums, Math.max(a, b), k);
	});
	return { entries, sums, held: new Set(found.first.slice(1)) };
}

/**
 * A kept factor with a few branches changed for a while: only the columns on their tree paths are computed again, no
 * digit is lost, and putting the values back gives the same bits.
 *
 * For changes whose low-rank correction would cancel: a milliohm pin that opens and leaves a star of sensors hanging
 * on megohms has no chain along which the change could be moved. Parts that come loose are found and held.
 */
import { refactorPart, solve, solveSparseAt } from "@loomwright/linalg";
import type { Topology } from "./circuit.js";
import { nodesOf, ownOhms, weightsOf } from "./incidence.js";
import { type Operating, sources } from "./operating.js";
import { TETHER } from "./solver.js";
import { hold, type Term } from "./term.js";

/** Most parts that one change may leave hanging in the air. */
const MOST_LOOSE = 8;

/** Nodes of a part that came loose. */
export type Part = ReadonlySet<number>;

/** Branches side by side on one entry of the matrix, or from one node to the reference; branches at each node. */
interface Places {
	readonly entries: ReadonlyMap<number, readonly number[]>;
	readonly sums: ReadonlyMap<number, readonly number[]>;
	readonly around: readonly (readonly number[])[];
	readonly held: ReadonlySet<number>;
}

interface Again<T> {
	readonly found: T;
	/** Parts left without a way to the reference, each now held at one node: no current flows in that. */
	readonly loose: readonly Part[];
}

export class Refactored {
	readonly #point: Operating<Topology>;
	#places: Places | undefined;

	constructor(point: Operating<Topology>) {
		this.#point = point;
	}

	/** All potentials under changes of branches; undefined where too much comes loose. */
	potentials(terms: readonly Term[]): Again<Float64Array> | undefined {
		const emf = this.#point.emf.slice();
		for (const term of terms) emf[term.branch] = term.emf;
		const { circuit, numeric } = this.#point;
		return this.#during(terms, (siemens) => solve(numeric, sources(circuit, siemens, emf)));
	}

	/** Ohms between the ends of each pair; undefined as for `potentials`. */
	ohms(
		terms: readonly Term[],
		pairs: readonly (readonly [number, number])[],
	): Again<Float64Array> | undefined {
		const { numeric } = this.#point;
		return this.#during(terms, () =>
			Float64Array.from(pairs, ([a, b]) => (a === b ? 0 : ownOhms(numeric, { a, b }))),
		);
	}

	/**
	 * (I + D S)^-1 D by rows, as D - D S' D with S' = B'A'^-1 B of the changed factor: A^-1 less A^-1 B times this times
	 * B'A^-1 is A'^-1. Of openings nothing cancels in it. Undefined as for `potentials`.
	 * @returns for the changes and then the holds of loose parts, all listed as `terms`
	 */
	gain(changes: readonly Term[]): Again<{ terms: readonly Term[]; g: Float64Array }> | undefined {
		const { numeric } = this.#point;
		return this.#during(changes, (_siemens, holds) => {
			const terms = [...changes, ...holds.map((node) => hold(node, TETHER))];
			const k = terms.length;
			const g = new Float64Array(k * k);
			const wanted = terms.flatMap(({ a, b }) => [Math.max(a, 0), Math.max(b, 0)]);
			terms.forEach((from, j) => {
				const z = solveSparseAt(numeric, nodesOf(from), weightsOf(from), wanted);
				terms.forEach(({ a, b, dg }, i) => {
					const s = (a < 0 ? 0 : z[2 * i]!) - (b < 0 ? 0 : z[2 * i + 1]!);
					g[i * k + j] = (i === j ? dg : 0) - dg * s * from.dg;
				});
			});
			return { terms, g };
		});
	}

	/** Does work on the changed factor and puts the factor back. */
	#during<T>(
		terms: readonly Term[],
		work: (siemens: Float64Array, holds: readonly number[]) => T,
	): Again<T> | undefined {
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
		const entry = [...places];
		const values = entry.map((place) => -total(entries.get(place), siemens));
		const before = entry.map((place) => numeric.values[place]!);
		const rowSums = new Map<number, number>();
		for (const node of nodes)
			rowSums.set(node, total(sums.get(node), siemens) + (held.has(node) ? TETHER : 0));
		const loose: Part[] = [];
		const holds: number[] = [];
		const sumsBefore = new Map([...nodes].map((node) => [node, numeric.rowSums![node]!]));
		try {
			for (;;) {
				const done = refactorPart(numeric, entry, values, [...rowSums.keys()], [...rowSums.values()]);
				if (done.ok) return { found: work(siemens, holds), loose };
				const part = loose.length < MOST_LOOSE ? this.#partOf(done.node, siemens) : undefined;
				if (part === undefined) return undefined;
				loose.push(part);
				holds.push(done.node);
				sumsBefore.set(done.node, sumsBefore.get(done.node) ?? numeric.rowSums![done.node]!);
				rowSums.set(done.node, TETHER);
			}
		} finally {
			refactorPart(numeric, entry, before, [...sumsBefore.keys()], [...sumsBefore.values()]);
		}
	}

	/** What conducts to a node; undefined where that reaches the reference or a hold, so that it is not loose. */
	#partOf(node: number, siemens: Float64Array): Part | undefined {
		const { around, held } = this.#places!;
		const { branches } = this.#point.circuit;
		const part = new Set([node]);
		for (const at of part) {
			if (held.has(at)) return undefined;
			for (const k of around[at]!) {
				if (siemens[k] === 0) continue;
				const { a, b } = branches[k]!;
				if (a < 0 || b < 0) return undefined;
				part.add(a === at ? b : a);
			}
		}
		return part;
	}
}

function total(branches: readonly number[] | undefined, siemens: Float64Array): number {
	let sum = 0;
	for (const k of branches ?? []) sum += siemens[k]!;
	return sum;
}

function placesOf({ circuit, components: found }: Operating<Topology>): Places {
	const entries = new Map<number, number[]>();
	const sums = new Map<number, number[]>();
	const around: number[][] = circuit.nodes.map(() => []);
	const put = (map: Map<number, number[]>, key: number, k: number) => {
		const list = map.get(key);
		if (list) list.push(k);
		else map.set(key, [k]);
	};
	circuit.branches.forEach(({ a, b }, k) => {
		const place = circuit.pattern.edge[k]!;
		if (place >= 0) put(entries, place, k);
		else if (a !== b) put(sums, Math.max(a, b), k);
		if (a >= 0) around[a]!.push(k);
		if (b >= 0) around[b]!.push(k);
	});
	return { entries, sums, around, held: new Set(found.first.slice(1)) };
}

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

/** Most points looked at for a part that comes loose; a larger one is left to the full solve. */
const MOST_LOOSE = 200;

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
	/** The point's own between calls. */
	readonly #siemens: Float64Array;
	/** Walk in which each node was last met. */
	readonly #mark: Int32Array;
	#stamp = 0;

	constructor(point: Operating<Topology>) {
		this.#point = point;
		this.#siemens = point.siemens.slice();
		this.#mark = new Int32Array(point.circuit.nodes.length);
	}

	/** All potentials under changes of branches; undefined where too large a part comes loose. */
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
		this.#places ??= placesOf(this.#point);
		const { entries, sums, held } = this.#places;
		const siemens = this.#siemens;
		for (const term of terms) siemens[term.branch] = term.after;
		const places: number[] = [];
		const before: number[] = [];
		const sumsBefore: number[] = [];
		const nodes: number[] = [];
		const node = (at: number) => {
			if (nodes.includes(at)) return;
			nodes.push(at);
			sumsBefore.push(numeric.rowSums![at]!);
		};
		for (const { branch, a, b } of terms) {
			const place = circuit.pattern.edge[branch]!;
			if (place < 0) {
				if (a !== b) node(Math.max(a, b));
			} else if (!places.includes(place)) {
				places.push(place);
				before.push(numeric.values[place]!);
			}
		}
		const loose = this.#loose(terms);
		const holds = loose.map((part) => part.keys().next().value!);
		for (const at of holds) node(at);
		try {
			const values = places.map((place) => -total(entries.get(place), siemens));
			const rowSums = nodes.map(
				(at) => total(sums.get(at), siemens) + (held.has(at) || holds.includes(at) ? TETHER : 0),
			);
			const done = refactorPart(numeric, places, values, nodes, rowSums);
			return done.ok ? { found: work(siemens, holds), loose } : undefined;
		} finally {
			for (const term of terms) siemens[term.branch] = term.before;
			refactorPart(numeric, places, before, nodes, sumsBefore);
		}
	}

	/** Parts that what opens leaves without a way to the reference or a hold. Few points lie in such a part. */
	#loose(terms: readonly Term[]): Part[] {
		const parts: Part[] = [];
		let openings = 0;
		for (const { before, after } of terms) if (before > 0 && after === 0) openings++;
		// Bridges are taken out before, and one opening that is none cuts nothing off.
		if (openings < 2) return parts;
		for (const { after, a, b } of terms) {
			if (after > 0) continue;
			for (const node of [a, b]) {
				if (node < 0 || parts.some((part) => part.has(node))) continue;
				const part = this.#partOf(node);
				if (part !== undefined) parts.push(part);
			}
		}
		return parts;
	}

	/** What conducts to a node; undefined where that reaches the reference, a hold or too many points. */
	#partOf(node: number): Part | undefined {
		const { around, held } = this.#places!;
		const { branches } = this.#point.circuit;
		const walked = [node];
		const mark = this.#mark;
		const now = ++this.#stamp;
		mark[node] = now;
		for (let q = 0; q < walked.length; q++) {
			const at = walked[q]!;
			if (held.has(at) || walked.length > MOST_LOOSE) return undefined;
			for (const k of around[at]!) {
				if (this.#siemens[k] === 0) continue;
				const { a, b } = branches[k]!;
				if (a < 0 || b < 0) return undefined;
				const next = a === at ? b : a;
				if (mark[next] === now) continue;
				mark[next] = now;
				walked.push(next);
			}
		}
		return new Set(walked);
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

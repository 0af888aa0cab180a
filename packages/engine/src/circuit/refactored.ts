/**
 * A kept factor with a few branches changed for a while: only the columns on their tree paths are computed again, no
 * digit is lost, and putting the values back gives the same bits.
 *
 * For changes whose low-rank correction would cancel: a milliohm pin that opens and leaves a star of sensors hanging
 * on megohms has no chain along which the change could be moved. Parts that come loose are found and held.
 */
import { ConductorOhms, type KeptForward, Patch, withAncestors } from "@loomwright/linalg";
import type { Branch, Topology } from "./circuit.js";
import { Once } from "./once.js";
import { type Operating, sources } from "./operating.js";
import { type Places, placesOf } from "./places.js";
import { solveSmall } from "./small.js";
import { capacitance } from "./solution.js";
import { TETHER } from "./solver.js";
import { hold, type Term } from "./term.js";
import { type Part, Ties } from "./ties.js";

type Pairs = readonly (readonly [number, number])[];

interface Again<T> {
	readonly found: T;
	/** Parts left without a way to the reference, each now held at one node: no current flows in that. */
	readonly loose: readonly Part[];
}

/** What the sources push into each node at the point, and what of the solve with it any change leaves as it is. */
interface Sources {
	readonly before: Float64Array;
	/** The same between calls. */
	readonly amps: Float64Array;
	readonly forward: KeptForward;
	/** Places of the nodes looked at, and of all that they hang on. */
	readonly wanted: Int32Array;
	/** All places. */
	readonly all: Int32Array;
	/** By place; the last is the reference's. */
	readonly volts: Float64Array;
}

export class Refactored {
	readonly #point: Operating<Topology>;
	readonly #looked: Pairs;
	readonly #places: Places;
	/** Found when first needed. */
	#ties: Ties | undefined;
	#sources: Sources | undefined;
	readonly #patch: Patch;
	/** Of the factor as it stands when asked. */
	readonly #ohms: ConductorOhms;
	/** The point's own between calls. */
	readonly #siemens: Float64Array;
	readonly #emf: Float64Array;
	readonly #once: Once;
	readonly #onceOfPlaces: Once;

	/** @param looked node pairs whose potentials will be asked for */
	constructor(point: Operating<Topology>, looked: Pairs) {
		this.#point = point;
		this.#looked = looked;
		this.#patch = new Patch(point.numeric);
		this.#ohms = new ConductorOhms(point.numeric);
		this.#siemens = point.siemens.slice();
		this.#emf = point.emf.slice();
		this.#places = placesOf(point.circuit);
		this.#once = new Once(point.circuit.nodes.length);
		this.#onceOfPlaces = new Once(point.circuit.pattern.rowIdx.length);
	}

	/**
	 * Potentials of the nodes looked at under changes of branches and added conductors, by the node's place in the
	 * elimination order with the reference last, in an array that the next call overwrites; undefined where too large a
	 * part comes loose.
	 */
	potentials(terms: readonly Term[]): Again<Float64Array> | undefined {
		this.#sources ??= sourcesOf(this.#point, this.#looked, this.#patch);
		const { before, amps, forward, volts } = this.#sources;
		const links = terms.filter(({ branch }) => branch < 0);
		const wanted = links.length > 0 ? this.#sources.all : this.#sources.wanted;
		return this.#during(terms, () => {
			this.#putSources(terms);
			this.#patch.solve(forward, amps, wanted, volts);
			if (links.length > 0) {
				this.#push(links);
				this.#patch.solve(forward, amps, wanted, volts);
			}
			for (const { branch, a, b } of terms) {
				if (branch >= 0) this.#emf[branch] = this.#point.emf[branch]!;
				if (a >= 0) amps[a] = before[a]!;
				if (b >= 0) amps[b] = before[b]!;
			}
			return volts;
		});
	}

	/** Puts what the sources push into the nodes of changed branches. */
	#putSources(terms: readonly Term[]): void {
		const { branches } = this.#point.circuit;
		const { amps } = this.#sources!;
		for (const { branch, emf } of terms) if (branch >= 0) this.#emf[branch] = emf;
		const once = this.#once.anew();
		for (const { a, b, dh } of terms) {
			if (dh === 0) continue;
			if (a >= 0 && once.isNew(a)) amps[a] = this.#ampsInto(a, branches);
			if (b >= 0 && once.isNew(b)) amps[b] = this.#ampsInto(b, branches);
		}
	}

	/** Adds the currents that added conductors take, from the potentials without them: c = -(I + D S)^-1 D u. */
	#push(links: readonly Term[]): void {
		const { inverse } = this.#point.circuit.symbolic;
		const { amps, volts } = this.#sources!;
		const k = links.length;
		const across = (node: number) => (node < 0 ? 0 : volts[inverse[node]!]!);
		const c = Float64Array.from(links, ({ a, b, dg }) => -dg * (across(a) - across(b)));
		const s = this.#ohms.among(links.flatMap(({ a, b }) => [a, b]));
		solveSmall(capacitance(links, s), c, k);
		links.forEach(({ a, b }, i) => {
			if (a >= 0) amps[a]! += c[i]!;
			if (b >= 0) amps[b]! -= c[i]!;
		});
	}

	/** Amperes that the sources push into a node. */
	#ampsInto(node: number, branches: readonly Branch[]): number {
		const { start, by, to } = this.#places;
		let sum = 0;
		for (let r = start[node]!; r < start[node + 1]!; r++) {
			const k = by[r]!;
			const amps = this.#siemens[k]! * this.#emf[k]!;
			if (amps !== 0 && to[r] !== node) sum += branches[k]!.a === node ? amps : -amps;
		}
		return sum;
	}

	/** Ohms between the ends of each pair; undefined as for `potentials`. */
	ohms(
		terms: readonly Term[],
		pairs: readonly (readonly [number, number])[],
	): Again<Float64Array> | undefined {
		return this.#during(terms, () => Float64Array.from(pairs, ([a, b]) => this.#ohms.own(a, b)));
	}

	/**
	 * (I + D S)^-1 D by rows, as D - D S' D with S' = B'A'^-1 B of the changed factor: A^-1 less A^-1 B times this times
	 * B'A^-1 is A'^-1. Of openings nothing cancels in it. Undefined as for `potentials`.
	 * @returns for the changes and then the holds of loose parts, all listed as `terms`
	 */
	gain(changes: readonly Term[]): Again<{ terms: readonly Term[]; g: Float64Array }> | undefined {
		return this.#during(changes, (holds) => {
			const terms = [...changes, ...holds.map((node) => hold(node, TETHER))];
			const k = terms.length;
			const g = new Float64Array(k * k);
			const s = this.#ohms.among(terms.flatMap(({ a, b }) => [a, b]));
			for (let i = 0; i < k; i++)
				for (let j = 0; j < k; j++)
					g[i * k + j] = (i === j ? terms[i]!.dg : 0) - terms[i]!.dg * s[i * k + j]! * terms[j]!.dg;
			return { terms, g };
		});
	}

	get #tied(): Ties {
		this.#ties ??= new Ties(this.#point);
		return this.#ties;
	}

	/** Parts that changes of branches leave without a way to the reference or a hold. */
	loose(terms: readonly Term[]): readonly Part[] {
		this.#putIn(terms);
		const parts = this.#tied.loose(terms, this.#siemens);
		this.#putBack(terms);
		return parts;
	}

	/** Does work on the changed factor and puts the factor back. */
	#during<T>(terms: readonly Term[], work: (holds: readonly number[]) => T): Again<T> | undefined {
		const { circuit } = this.#point;
		const { entries, sums } = this.#places;
		const { held } = this.#tied;
		const siemens = this.#siemens;
		this.#putIn(terms);
		const loose = this.#tied.loose(terms, siemens);
		// A part that hangs on an added conductor alone is left to the full solve.
		if (loose.length > 0 && terms.some(({ branch }) => branch < 0)) {
			this.#putBack(terms);
			return undefined;
		}
		const holds = loose.map((part) => part.keys().next().value!);
		const places: number[] = [];
		const nodes: number[] = [];
		const once = this.#once.anew();
		const onceOf = this.#onceOfPlaces.anew();
		const put = (node: number) => {
			if (node >= 0 && once.isNew(node)) nodes.push(node);
		};
		holds.forEach(put);
		for (const { branch, a, b } of terms) {
			if (branch < 0) {
				// Nothing of the matrix differs there, but currents will be pushed in.
				put(a);
				put(b);
				continue;
			}
			const place = circuit.pattern.edge[branch]!;
			if (place < 0) put(Math.max(a, b));
			else if (onceOf.isNew(place)) places.push(place);
		}
		const values = places.map((place) => -total(entries.get(place), siemens));
		const rowSums = nodes.map(
			(at) => total(sums.get(at), siemens) + (held[at] === 1 || holds.includes(at) ? TETHER : 0),
		);
		try {
			return this.#patch.during(places, values, nodes, rowSums, (done) =>
				done.ok ? { found: work(holds), loose } : undefined,
			);
		} finally {
			this.#putBack(terms);
		}
	}

	#putIn(terms: readonly Term[]): void {
		for (const { branch, after } of terms) if (branch >= 0) this.#siemens[branch] = after;
	}

	#putBack(terms: readonly Term[]): void {
		for (const { branch, before } of terms) if (branch >= 0) this.#siemens[branch] = before;
	}
}

function sourcesOf({ circuit, siemens, emf }: Operating<Topology>, looked: Pairs, patch: Patch): Sources {
	const before = sources(circuit, siemens, emf);
	const forward = patch.forward(before);
	const nodes = looked.flat().filter((node) => node >= 0);
	const wanted = withAncestors(circuit.symbolic, nodes);
	const all = Int32Array.from(before.keys()).reverse();
	return { before, amps: before.slice(), forward, wanted, all, volts: new Float64Array(before.length + 1) };
}

function total(branches: readonly number[] | undefined, siemens: Float64Array): number {
	let sum = 0;
	for (const k of branches ?? []) sum += siemens[k]!;
	return sum;
}

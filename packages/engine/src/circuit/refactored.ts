/**
 * A kept factor with a few branches changed for a while: only the columns on their tree paths are computed again, no
 * digit is lost, and putting the values back gives the same bits.
 *
 * For changes whose low-rank correction would cancel: a milliohm pin that opens and leaves a star of sensors hanging
 * on megohms has no chain along which the change could be moved. Parts that come loose are found and held.
 */
import { ConductorOhms, type KeptForward, Patch, withAncestors } from "@loomwright/linalg";
import type { Branch, Topology } from "./circuit.js";
import { type Operating, sources } from "./operating.js";
import { solveSmall } from "./small.js";
import { capacitance } from "./solution.js";
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
	/** The branches of node k are around.by[start[k] .. start[k + 1]), their far nodes stand in around.to. */
	readonly around: { readonly start: Int32Array; readonly by: Int32Array; readonly to: Int32Array };
	/** 1 for each node that is held. */
	readonly held: Uint8Array;
}

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

/** Numbers met since it was last asked anew. */
class Once {
	readonly #met: Int32Array;
	#now = 0;

	constructor(count: number) {
		this.#met = new Int32Array(count);
	}

	anew(): this {
		this.#now++;
		return this;
	}

	/** True the first time. */
	isNew(number: number): boolean {
		if (this.#met[number] === this.#now) return false;
		this.#met[number] = this.#now;
		return true;
	}
}

export class Refactored {
	readonly #point: Operating<Topology>;
	readonly #looked: Pairs;
	#places: Places | undefined;
	#sources: Sources | undefined;
	readonly #patch: Patch;
	/** Of the factor as it stands when asked. */
	readonly #ohms: ConductorOhms;
	/** The point's own between calls. */
	readonly #siemens: Float64Array;
	readonly #emf: Float64Array;
	/** Per node, the walks in which it was last met: even where it is held, odd where that is not known. */
	readonly #mark: Int32Array;
	/** Nodes of the walk at hand. */
	readonly #walked: number[] = [];
	#stamp = 0;
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
		this.#mark = new Int32Array(point.circuit.nodes.length);
		this.#once = new Once(point.circuit.nodes.length);
		this.#onceOfPlaces = new Once(point.circuit.pattern.rowIdx.length);
	}

	/**
	 * Potentials of the nodes looked at under changes of branches and added conductors, by the node's place in the
	 * elimination order with the reference last, in an array that the next call overwrites; undefined where too large a part comes loose.
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
		const { start, by, to } = this.#places!.around;
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

	/** Parts that changes of branches leave without a way to the reference or a hold. */
	loose(terms: readonly Term[]): readonly Part[] {
		this.#places ??= placesOf(this.#point);
		for (const term of terms) this.#siemens[term.branch] = term.after;
		const parts = this.#loose(terms);
		for (const term of terms) this.#siemens[term.branch] = term.before;
		return parts;
	}

	/** Does work on the changed factor and puts the factor back. */
	#during<T>(terms: readonly Term[], work: (holds: readonly number[]) => T): Again<T> | undefined {
		const { circuit } = this.#point;
		this.#places ??= placesOf(this.#point);
		const { entries, sums, held } = this.#places;
		const siemens = this.#siemens;
		for (const { branch, after } of terms) if (branch >= 0) siemens[branch] = after;
		const loose = this.#loose(terms);
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

	#putBack(terms: readonly Term[]): void {
		for (const { branch, before } of terms) if (branch >= 0) this.#siemens[branch] = before;
	}

	/** Parts that what opens leaves without a way to the reference or a hold. Few points lie in such a part. */
	#loose(terms: readonly Term[]): Part[] {
		const parts: Part[] = [];
		let openings = 0;
		for (const { before, after } of terms) if (before > 0 && after === 0) openings++;
		// Bridges are taken out before, and one opening that is none cuts nothing off.
		if (openings < 2) return parts;
		this.#stamp += 2;
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
		const { start, by, to } = around;
		const mark = this.#mark;
		const siemens = this.#siemens;
		// What an earlier walk of these changes met is known to be held, and so is all that comes to it.
		const holds = this.#stamp;
		const met = holds + 1;
		if (mark[node] === holds) return undefined;
		const walked = this.#walked;
		walked.length = 0;
		walked.push(node);
		mark[node] = met;
		for (let q = 0; q < walked.length; q++) {
			const at = walked[q]!;
			if (held[at] === 1 || walked.length > MOST_LOOSE) return this.#areHeld(walked);
			for (let r = start[at]!; r < start[at + 1]!; r++) {
				if (siemens[by[r]!] === 0) continue;
				const next = to[r]!;
				if (next < 0 || mark[next] === holds) return this.#areHeld(walked);
				if (mark[next] === met) continue;
				mark[next] = met;
				walked.push(next);
			}
		}
		return new Set(walked);
	}

	#areHeld(walked: readonly number[]): undefined {
		for (let q = 0; q < walked.length; q++) this.#mark[walked[q]!] = this.#stamp;
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

function placesOf({ circuit, components: found }: Operating<Topology>): Places {
	const entries = new Map<number, number[]>();
	const sums = new Map<number, number[]>();
	const put = (map: Map<number, number[]>, key: number, k: number) => {
		const list = map.get(key);
		if (list) list.push(k);
		else map.set(key, [k]);
	};
	const start = new Int32Array(circuit.nodes.length + 1);
	circuit.branches.forEach(({ a, b }, k) => {
		const place = circuit.pattern.edge[k]!;
		if (place >= 0) put(entries, place, k);
		else if (a !== b) put(sums, Math.max(a, b), k);
		if (a >= 0) start[a]!++;
		if (b >= 0) start[b]!++;
	});
	for (let node = 0; node < circuit.nodes.length; node++) start[node + 1]! += start[node]!;
	const by = new Int32Array(start.at(-1)!);
	const to = new Int32Array(start.at(-1)!);
	// Filled from the back: each start ends where its node's branches begin.
	const fill = (node: number, far: number, k: number) => {
		if (node < 0) return;
		const at = --start[node]!;
		by[at] = k;
		to[at] = far;
	};
	circuit.branches.forEach(({ a, b }, k) => {
		fill(a, b, k);
		fill(b, a, k);
	});
	const held = new Uint8Array(circuit.nodes.length);
	for (const node of found.first.slice(1)) held[node] = 1;
	return { entries, sums, around: { start, by, to }, held };
}

/** What ties each point of a network to the reference, and the parts that a change leaves without a tie. */
import type { Topology } from "./circuit.js";
import { Once } from "./once.js";
import type { Operating } from "./operating.js";
import { type Places, placesOf } from "./places.js";
import type { Term } from "./term.js";

/** Most points looked at for a part that comes loose; a larger one is left to the full solve. */
const MOST_LOOSE = 200;

/** Nodes of a part that came loose. */
export type Part = ReadonlySet<number>;

export class Ties {
	/** 1 for each node that is held in place of a tie: one of every part that has none. */
	readonly held: Uint8Array;
	readonly #places: Places;
	/** The next node on some conducting way to the reference (-1) or a hold, and the branch there; -1 at a hold. */
	readonly #next: Int32Array;
	readonly #by: Int32Array;
	/** Nodes met in the walk at hand. */
	readonly #met: Once;
	/** Nodes of the walk at hand. */
	readonly #walked = new Int32Array(MOST_LOOSE);

	/** Cost O(nodes + branches). */
	constructor({ circuit, siemens, components }: Operating<Topology>) {
		const n = circuit.nodes.length;
		const places = placesOf(circuit);
		const { start, by, to } = places;
		this.#places = places;
		this.held = new Uint8Array(n);
		for (const node of components.first.slice(1)) this.held[node] = 1;
		this.#next = new Int32Array(n).fill(-1);
		this.#by = new Int32Array(n).fill(-1);
		this.#met = new Once(n);
		const reached = new Uint8Array(n);
		const queue = new Int32Array(n);
		let count = 0;
		const reach = (node: number, next: number, branch: number) => {
			if (node < 0 || reached[node] === 1) return;
			reached[node] = 1;
			this.#next[node] = next;
			this.#by[node] = branch;
			queue[count++] = node;
		};
		for (let node = 0; node < n; node++) if (this.held[node] === 1) reach(node, -1, -1);
		circuit.branches.forEach(({ a, b }, k) => {
			if (siemens[k] !== 0 && (a < 0 || b < 0)) reach(Math.max(a, b), -1, k);
		});
		for (let q = 0; q < count; q++) {
			const node = queue[q]!;
			for (let r = start[node]!; r < start[node + 1]!; r++)
				if (siemens[by[r]!] !== 0) reach(to[r]!, node, by[r]!);
		}
	}

	/**
	 * Parts that a change leaves without a way to the reference or a hold. Few points lie in such a part.
	 * @param siemens of all branches under the change
	 */
	loose(terms: readonly Term[], siemens: Float64Array): Part[] {
		const parts: Part[] = [];
		let openings = 0;
		for (const { before, after } of terms) if (before > 0 && after === 0) openings++;
		// Bridges are taken out before, and one opening that is none cuts nothing off.
		if (openings < 2) return parts;
		for (const { after, a, b } of terms) {
			if (after > 0) continue;
			for (const node of [a, b]) {
				if (this.#isTied(node, siemens) || parts.some((part) => part.has(node))) continue;
				const part = this.#partOf(node, siemens);
				if (part !== undefined) parts.push(part);
			}
		}
		return parts;
	}

	/** True where the known way from a node still conducts. */
	#isTied(node: number, siemens: Float64Array): boolean {
		for (let at = node; at >= 0; at = this.#next[at]!) {
			const by = this.#by[at]!;
			if (by >= 0 && siemens[by] === 0) return false;
		}
		return true;
	}

	/** What conducts to a node; undefined where something in it is tied, or where it is too many points. */
	#partOf(node: number, siemens: Float64Array): Part | undefined {
		const { start, by, to } = this.#places;
		const met = this.#met.anew();
		const walked = this.#walked;
		walked[0] = node;
		met.isNew(node);
		let count = 1;
		for (let q = 0; q < count; q++) {
			const at = walked[q]!;
			if (this.#isTied(at, siemens)) return undefined;
			for (let r = start[at]!; r < start[at + 1]!; r++) {
				if (siemens[by[r]!] === 0) continue;
				const next = to[r]!;
				if (next < 0) return undefined;
				if (!met.isNew(next)) continue;
				if (count === MOST_LOOSE) return undefined;
				walked[count++] = next;
			}
		}
		return new Set(walked.subarray(0, count));
	}
}

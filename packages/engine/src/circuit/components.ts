/**
 * Which points conduct to which: connected components of the conducting branches.
 *
 * Whether a reading exists at all is decided here, by counting, never by a small pivot.
 */
import type { Topology } from "./circuit.js";

export interface Components {
	/** Component number of each node; the reference's component is 0. */
	readonly of: Int32Array;
	/** One node of each component; entry 0 is unused (the reference stands for it). */
	readonly first: readonly number[];
}

/** An extra conductor between two points. */
export interface Link {
	readonly a: number;
	readonly b: number;
}

/**
 * @param siemens conductance of every branch of the circuit; 0 does not conduct
 * @param links further conductors, for faults that join points
 * Cost O(nodes + branches).
 */
export function components(
	circuit: Topology,
	siemens: ArrayLike<number>,
	links: readonly Link[] = [],
): Components {
	const n = circuit.nodes.length;
	// Union-find with path halving; slot n is the reference.
	const parent = new Int32Array(n + 1);
	for (let i = 0; i <= n; i++) parent[i] = i;
	const root = (k: number) => {
		let i = k < 0 ? n : k;
		while (parent[i] !== i) {
			parent[i] = parent[parent[i]!]!;
			i = parent[i]!;
		}
		return i;
	};
	const { branches } = circuit;
	for (let k = 0; k < branches.length; k++) {
		if (siemens[k] === 0) continue;
		const branch = branches[k]!;
		parent[root(branch.a)] = root(branch.b);
	}
	for (const link of links) parent[root(link.a)] = root(link.b);
	const number = new Int32Array(n + 1).fill(-1);
	number[root(n)] = 0;
	const first = [-1];
	const of = new Int32Array(n);
	for (let i = 0; i < n; i++) {
		const r = root(i);
		if (number[r] === -1) number[r] = first.push(i) - 1;
		of[i] = number[r]!;
	}
	return { of, first };
}

/** Component number of a node, the reference included. */
export function componentOf(found: Components, node: number): number {
	return node < 0 ? 0 : found.of[node]!;
}

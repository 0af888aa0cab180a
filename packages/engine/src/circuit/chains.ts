/**
 * Chains: branches in series through points that nothing else joins (pin, crimp, wire, crimp, pin ...).
 *
 * A resistance added, or an opening, anywhere in a chain acts the same on all points outside it. So a change of a
 * half-milliohm crimp is worked as a change of the chain's largest resistance, where the low-rank correction loses
 * no digits (1 - g z is then a plain fraction, not 1e-7), and only points inside the chain are put right after.
 */
import type { Topology } from "./circuit.js";

export interface Chains {
	/** Chain number of each branch, -1 where it is in none. */
	readonly of: Int32Array;
	/** Position of a branch in its chain, from 0. */
	readonly at: Int32Array;
	/** For each chain, its branch of largest resistance. */
	readonly largest: readonly number[];
	/** Chain number of each interior node, -1 for others. */
	readonly nodeOf: Int32Array;
	/** Interior node's place: it lies between branch positions `nodeAt` and `nodeAt + 1`. */
	readonly nodeAt: Int32Array;
}

/** Cost O(nodes + branches). Branches of 0 S are left out. */
export function findChains(circuit: Topology, siemens: ArrayLike<number>): Chains {
	const n = circuit.nodes.length;
	const { branches } = circuit;
	const degree = new Int32Array(n);
	// The two conducting branches of a node of degree 2.
	const one = new Int32Array(n).fill(-1);
	const two = new Int32Array(n).fill(-1);
	branches.forEach((branch, k) => {
		if (siemens[k] === 0 || branch.a === branch.b) return;
		for (const node of [branch.a, branch.b]) {
			if (node < 0) continue;
			degree[node]!++;
			if (one[node] === -1) one[node] = k;
			else two[node] = k;
		}
	});
	const of = new Int32Array(branches.length).fill(-1);
	const at = new Int32Array(branches.length);
	const nodeOf = new Int32Array(n).fill(-1);
	const nodeAt = new Int32Array(n);
	const largest: number[] = [];
	const inner = (node: number) => node >= 0 && degree[node] === 2;
	const far = (branch: number, node: number) => {
		const { a, b } = branches[branch]!;
		return a === node ? b : a;
	};
	branches.forEach((branch, start) => {
		if (siemens[start] === 0 || of[start] !== -1 || branch.a === branch.b) return;
		// Walk to one end first, then number from there. A ring of inner nodes only stops where it began.
		let edge = start;
		let end = branch.a;
		while (inner(end)) {
			const next = one[end] === edge ? two[end]! : one[end]!;
			if (next === start) break;
			edge = next;
			end = far(edge, end);
		}
		const chain = largest.length;
		let position = 0;
		let best = edge;
		let node = far(edge, end);
		for (;;) {
			of[edge] = chain;
			at[edge] = position;
			if (siemens[edge]! < siemens[best]!) best = edge;
			if (!inner(node)) break;
			const next = one[node] === edge ? two[node]! : one[node]!;
			if (of[next] !== -1) break;
			nodeOf[node] = chain;
			nodeAt[node] = position;
			edge = next;
			node = far(edge, node);
			position++;
		}
		largest.push(best);
	});
	return { of, at, largest, nodeOf, nodeAt };
}

/** Walking the network: what conducts from where to where, and by which contacts, wires and joints. */
import type { Circuit } from "../../circuit/index.js";
import { otherHalf } from "../../loom/index.js";

/** May this branch be walked to that node? */
export type Passes = (branch: number, to: number) => boolean;

export interface Reach {
	/** Nodes reached, nearest first, the starts included. -1 stands for the body metal. */
	readonly nodes: readonly number[];
	has(node: number): boolean;
	/** Branch by which a node was reached; -1 for a start and for a node not reached. */
	by(node: number): number;
	/** Branches from the start to a reached node, in order; fewest branches. */
	wayTo(node: number): number[];
}

const cache = new WeakMap<Circuit, readonly (readonly number[])[]>();

/** Branch numbers at a node. */
export function branchesAt(circuit: Circuit, node: number): readonly number[] {
	let table = cache.get(circuit);
	if (table === undefined) {
		const lists: number[][] = Array.from({ length: circuit.nodes.length + 1 }, () => []);
		circuit.branches.forEach(({ a, b }, k) => {
			lists[a + 1]!.push(k);
			lists[b + 1]!.push(k);
		});
		table = lists;
		cache.set(circuit, table);
	}
	return table[node + 1]!;
}

/** The other end of a branch. */
export function across(circuit: Circuit, branch: number, from: number): number {
	const { a, b } = circuit.branches[branch]!;
	return a === from ? b : a;
}

/** Breadth first from the starts over the branches that pass. Cost O(nodes + branches) reached. */
export function reach(circuit: Circuit, starts: readonly number[], passes: Passes): Reach {
	// Branch by which each node was reached, the reference at 0; -1 at a start, -2 where not reached.
	const came = new Int32Array(circuit.nodes.length + 1).fill(-2);
	const nodes = [...new Set(starts)];
	for (const node of nodes) came[node + 1] = -1;
	for (let head = 0; head < nodes.length; head++) {
		const node = nodes[head]!;
		for (const branch of branchesAt(circuit, node)) {
			const to = across(circuit, branch, node);
			if (came[to + 1] !== -2 || !passes(branch, to)) continue;
			came[to + 1] = branch;
			nodes.push(to);
		}
	}
	return {
		nodes,
		has: (node) => came[node + 1] !== -2,
		by: (node) => Math.max(came[node + 1]!, -1),
		wayTo(node) {
			const way: number[] = [];
			let at = node;
			for (let branch = came[at + 1]!; branch >= 0; branch = came[at + 1]!) {
				way.push(branch);
				at = across(circuit, branch, at);
			}
			return way.reverse();
		},
	};
}

/** Ids of contacts, wires, joints and parts along branches, in order, none twice running. */
export function namesAlong(circuit: Circuit, branches: readonly number[]): string[] {
	const names: string[] = [];
	const put = (name: string) => {
		if (names.at(-1) !== name) names.push(name);
	};
	branches.forEach((branch, at) => {
		const { owner, a } = circuit.branches[branch]!;
		const contact = circuit.loom.contacts.get(owner.id);
		const half = owner.what === "mated contact" && contact ? otherHalf(circuit.loom, contact) : undefined;
		if (half === undefined) {
			put(owner.id);
			return;
		}
		// Through an in-line connector: both halves, in the order they are met.
		const before = branches[at - 1];
		const ends = before === undefined ? [a] : [circuit.branches[before]!.a, circuit.branches[before]!.b];
		for (const name of ends.includes(a) ? [owner.id, half.id] : [half.id, owner.id]) put(name);
	});
	return names;
}

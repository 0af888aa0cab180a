/**
 * Bridges: branches whose loss alone separates the points they join.
 *
 * No current flows in a bridge (what leaves a part of the network by it has no way back), so opening one
 * changes no potential difference on either side; it only makes readings across it 'open'.
 * R. E. Tarjan, 'A note on finding the bridges of a graph', Inf. Process. Lett. 2(6), 1974.
 */
import type { Topology } from "./circuit.js";

export interface Bridges {
	/** 1 for each branch that is a bridge. */
	readonly is: Uint8Array;
	/** True when opening bridge `branch` separates the two nodes. */
	separates(branch: number, a: number, b: number): boolean;
	/** Where in the search a node lies; `cutOff` says what a bridge cuts off. */
	place(node: number): number;
	/** The places cut off by opening bridge `branch`: from (inclusive), to (exclusive). */
	cutOff(branch: number): readonly [from: number, to: number];
}

/** Cost O(nodes + branches). Branches of 0 S are left out. */
export function findBridges(circuit: Topology, siemens: ArrayLike<number>): Bridges {
	const n = circuit.nodes.length + 1;
	const ground = n - 1;
	const { branches } = circuit;
	const count = branches.length;
	const head = new Int32Array(n).fill(-1);
	const next = new Int32Array(2 * count);
	const end = (side: number) => {
		const branch = branches[side >> 1]!;
		const node = side & 1 ? branch.b : branch.a;
		return node < 0 ? ground : node;
	};
	for (let side = 0; side < 2 * count; side++) {
		if (siemens[side >> 1] === 0) continue;
		const at = end(side);
		next[side] = head[at]!;
		head[at] = side;
	}
	const enter = new Int32Array(n).fill(-1);
	const leave = new Int32Array(n);
	const low = new Int32Array(n);
	const by = new Int32Array(n).fill(-1);
	const cursor = head.slice();
	const is = new Uint8Array(count);
	/** The far node of a bridge in the search tree: its subtree is the side cut off. */
	const far = new Int32Array(count).fill(-1);
	const stack = new Int32Array(n);
	let clock = 0;
	// The reference first, so that the far side of a bridge is the side away from it.
	for (let start = ground; start >= 0; start--) {
		if (enter[start] !== -1) continue;
		let top = 0;
		stack[0] = start;
		enter[start] = low[start] = clock++;
		while (top >= 0) {
			const at = stack[top]!;
			const side = cursor[at]!;
			if (side === -1) {
				leave[at] = clock;
				top--;
				if (top < 0) continue;
				const up = stack[top]!;
				const branch = by[at]!;
				low[up] = Math.min(low[up]!, low[at]!);
				if (low[at]! > enter[up]!) {
					is[branch] = 1;
					far[branch] = at;
				}
				continue;
			}
			cursor[at] = next[side]!;
			const branch = side >> 1;
			if (branch === by[at]) continue;
			const to = end(side ^ 1);
			if (enter[to] !== -1) {
				low[at] = Math.min(low[at]!, enter[to]!);
				continue;
			}
			by[to] = branch;
			enter[to] = low[to] = clock++;
			stack[++top] = to;
		}
	}
	const place = (node: number) => enter[node < 0 ? ground : node]!;
	const cutOff = (branch: number) => [enter[far[branch]!]!, leave[far[branch]!]!] as const;
	const below = (branch: number, node: number) => {
		const [from, to] = cutOff(branch);
		return place(node) >= from && place(node) < to;
	};
	return {
		is,
		separates: (branch, a, b) => below(branch, a) !== below(branch, b),
		place,
		cutOff,
	};
}

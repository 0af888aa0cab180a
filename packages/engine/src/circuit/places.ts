/** Where the branches of a network stand in its matrix, and which of them meet at each point. */
import type { Topology } from "./circuit.js";

export interface Places {
	/** Branches side by side on one entry of the matrix. */
	readonly entries: ReadonlyMap<number, readonly number[]>;
	/** Branches from a node to the reference. */
	readonly sums: ReadonlyMap<number, readonly number[]>;
	/** Node k has the branches by[start[k] .. start[k + 1]), with their far nodes in `to`. */
	readonly start: Int32Array;
	readonly by: Int32Array;
	readonly to: Int32Array;
}

const known = new WeakMap<Topology, Places>();

/** Found once for each network. Cost O(nodes + branches). */
export function placesOf(circuit: Topology): Places {
	let places = known.get(circuit);
	if (places === undefined) {
		places = find(circuit);
		known.set(circuit, places);
	}
	return places;
}

function find({ nodes, branches, pattern }: Topology): Places {
	const entries = new Map<number, number[]>();
	const sums = new Map<number, number[]>();
	const put = (map: Map<number, number[]>, key: number, k: number) => {
		const list = map.get(key);
		if (list) list.push(k);
		else map.set(key, [k]);
	};
	const start = new Int32Array(nodes.length + 1);
	branches.forEach(({ a, b }, k) => {
		const place = pattern.edge[k]!;
		if (place >= 0) put(entries, place, k);
		else if (a !== b) put(sums, Math.max(a, b), k);
		if (a >= 0) start[a]!++;
		if (b >= 0) start[b]!++;
	});
	for (let node = 0; node < nodes.length; node++) start[node + 1]! += start[node]!;
	const by = new Int32Array(start.at(-1)!);
	const to = new Int32Array(start.at(-1)!);
	// Filled from the back: each start ends where its node's branches begin.
	const fill = (node: number, far: number, k: number) => {
		if (node < 0) return;
		const at = --start[node]!;
		by[at] = k;
		to[at] = far;
	};
	branches.forEach(({ a, b }, k) => {
		fill(a, b, k);
		fill(b, a, k);
	});
	return { entries, sums, start, by, to };
}

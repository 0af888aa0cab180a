/** Looms of a wanted size that have the demo cars' structure, and their networks as bare matrices. */
import { fileURLToPath } from "node:url";
import { Circuit, type Loom, openCar, operate } from "@loomwright/engine";
import { networkPattern } from "@loomwright/linalg";
import { readFolder } from "@loomwright/shop";
import type { Network } from "../linalg/network-generator.js";
import { grow } from "./grow.js";

/**
 * The smaller demo car's circuits below 1,000 nodes, the larger one's from there, as many times as come nearest.
 * All bars are shared: they feed every copy.
 */
export function loomOf(nodes: number): Loom {
	const folder = new URL(`../../demo/${nodes < 1000 ? "small" : "main"}/`, import.meta.url);
	const { converted } = openCar(readFolder(fileURLToPath(folder)).tables);
	const bars = [...converted.joints.values()].filter(({ kind }) => kind === "bar").map(({ id }) => id);
	const copies = Math.max(1, Math.round(nodes / new Circuit(converted).nodes.length));
	return grow(converted, copies, new Set(bars));
}

/** The network of a loom in a condition, all that switches by itself settled; a part that hangs on nothing is held. */
export function networkOf(loom: Loom, condition: string): Network {
	const circuit = new Circuit(loom);
	const { siemens, numeric } = operate(circuit, circuit.standing(condition));
	const from = circuit.branches.map(({ a }) => a);
	const to = circuit.branches.map(({ b }) => b);
	const n = circuit.nodes.length;
	const pattern = networkPattern(n, from, to);
	const values = new Float64Array(pattern.rowIdx.length);
	const rowSums = Float64Array.from(numeric.rowSums!);
	for (let i = 0; i < n; i++) values[pattern.diagonal[i]!] = rowSums[i]!;
	siemens.forEach((g, k) => {
		const edge = pattern.edge[k]!;
		if (edge < 0) return;
		values[edge]! -= g;
		values[pattern.diagonal[from[k]!]!]! += g;
		values[pattern.diagonal[to[k]!]!]! += g;
	});
	return { n, from, to, siemens: [...siemens], pattern, values, rowSums };
}

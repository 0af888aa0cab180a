/**
 * Factor of a network's conductance matrix, floating parts tethered, extra conductors added by low rank.
 *
 * The factor is computed from conductances alone (off-diagonals and row sums, no subtraction), so 1e-8 S beside
 * 1e4 S costs no digits. docs/decisions/tethers.md says why floating parts are held as they are.
 */
import { factor, type Numeric, solve } from "@loomwright/linalg";
import type { AddedBranch } from "./changes.js";
import type { Topology } from "./circuit.js";
import { type Components, componentOf, components } from "./components.js";
import { CircuitError } from "./error.js";
import { type RankOne, updatedSolve } from "./rank-one.js";

/**
 * Conductance in siemens by which a part of the network without a way to the reference is held.
 * It is the only tie there, so it carries no current and its value changes no reading.
 */
export const TETHER = 1;

export interface NetworkSolver {
	/** Connected components, added branches included. */
	readonly components: Components;
	/** Factor of the matrix without the added branches. */
	readonly numeric: Numeric;
	/** Solves for potentials from node currents, in place; added branches included. */
	solve(rhs: Float64Array): Float64Array;
}

export function solverOf(
	circuit: Topology,
	siemens: Float64Array,
	added: readonly AddedBranch[],
): NetworkSolver {
	const bare = components(circuit, siemens);
	const numeric = factorNetwork(circuit, siemens, bare);
	if (added.length === 0) return { components: bare, numeric, solve: (rhs) => solve(numeric, rhs) };
	const joined = components(circuit, siemens, added);
	const terms = [...added.map((link): RankOne => link), ...spareTethers(bare, joined)];
	const update = updatedSolve(numeric, terms);
	if (update === undefined) {
		const names = added.flatMap(({ a, b }) => [a, b]).map((k) => circuit.nodes[k] ?? "@body");
		throw new CircuitError(`no accurate solution with ${names.join(" and ")} joined`, names);
	}
	return { components: joined, numeric, solve: update };
}

/** Tethers that an added conductor makes superfluous: their part now hangs on another one. */
function spareTethers(bare: Components, joined: Components): RankOne[] {
	const held = new Set<number>([0]);
	const spare: RankOne[] = [];
	for (let c = 1; c < bare.first.length; c++) {
		const node = bare.first[c]!;
		const now = componentOf(joined, node);
		if (held.has(now)) spare.push({ a: node, b: -1, siemens: -TETHER });
		held.add(now);
	}
	return spare;
}

function factorNetwork(circuit: Topology, siemens: Float64Array, found: Components): Numeric {
	const { pattern, branches } = circuit;
	const values = new Float64Array(pattern.rowIdx.length);
	const toReference = new Float64Array(circuit.nodes.length);
	for (let k = 0; k < branches.length; k++) {
		const g = siemens[k]!;
		if (g === 0) continue;
		const { a, b } = branches[k]!;
		const edge = pattern.edge[k]!;
		if (edge >= 0) values[edge]! -= g;
		else if (a >= 0 && b < 0) toReference[a]! += g;
		else if (b >= 0 && a < 0) toReference[b]! += g;
	}
	for (let c = 1; c < found.first.length; c++) toReference[found.first[c]!]! += TETHER;
	const result = factor(circuit.symbolic, values, toReference);
	if (result.ok) return result.numeric;
	const name = circuit.nodes[result.node]!;
	throw new CircuitError(`no definite potential at ${name}`, [name]);
}

/**
 * Factor of a network's conductance matrix, floating parts tethered, extra conductors put into the pattern.
 *
 * The factor is computed from conductances alone (off-diagonals and row sums, no subtraction), so 1e-8 S beside
 * 1e4 S costs no digits. docs/decisions/tethers.md says why floating parts are held as they are.
 */
import { analyse, factor, type Numeric, networkPattern } from "@loomwright/linalg";
import type { AddedBranch } from "./changes.js";
import type { Topology } from "./circuit.js";
import { type Components, components } from "./components.js";
import { acting, type Control, type Solves, solvesOf } from "./controls.js";
import { CircuitError } from "./error.js";

/**
 * Conductance in siemens by which a part of the network without a way to the reference is held.
 * It is the only tie there, so it carries no current and its value changes no reading.
 */
export const TETHER = 1;

export interface NetworkSolver extends Solves {
	/** Connected components, added branches included. */
	readonly components: Components;
	/** Factor of the matrix, controlled sources left out. */
	readonly numeric: Numeric;
	/** Controlled sources that act; none with all sources dead. */
	readonly controls: readonly Control[];
}

/**
 * Of the network with these conductances; `solve` gives potentials from node currents, in place.
 * @param joined the network with the added conductors, of {@link joinedBy}
 * @throws CircuitError where a point or the controlled sources have no definite state
 */
export function solverOf(
	circuit: Topology,
	siemens: Float64Array,
	added: readonly AddedBranch[],
	controlled: readonly Control[],
	joined: Topology,
): NetworkSolver {
	const found = components(circuit, siemens, added);
	const numeric = factorNetwork(joined, withLinks(siemens, added), found);
	const controls = controlled.length === 0 ? controlled : acting(controlled, siemens, found);
	return { components: found, numeric, controls, ...solvesOf(numeric, controls, siemens, circuit.branches) };
}

/**
 * The network with further conductors as branches of their own. Analysed anew: a correction by low rank would lose the
 * digits of what a short leaves of a line of a gigohm.
 */
export function joinedBy(circuit: Topology, added: readonly AddedBranch[]): Topology {
	if (added.length === 0) return circuit;
	const { nodes, branches } = circuit;
	const owner = { what: "device", id: "", element: "" } as const;
	const all = [...branches, ...added.map(({ a, b }) => ({ a, b, spread: 0, emfSpread: 0, owner }))];
	const pattern = networkPattern(
		nodes.length,
		all.map((branch) => branch.a),
		all.map((branch) => branch.b),
	);
	return { nodes, branches: all, pattern, symbolic: analyse(nodes.length, pattern.colPtr, pattern.rowIdx) };
}

function withLinks(siemens: Float64Array, added: readonly AddedBranch[]): Float64Array {
	if (added.length === 0) return siemens;
	const all = new Float64Array(siemens.length + added.length);
	all.set(siemens);
	all.set(
		added.map((link) => link.siemens),
		siemens.length,
	);
	return all;
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

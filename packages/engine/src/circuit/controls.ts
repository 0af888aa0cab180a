/**
 * Controlled sources: branches whose source follows a difference elsewhere in the network, emf + gain x (v_a - v_b).
 *
 * They alone break the symmetry of the matrix, A = S + U V' with a column -g gain b and a row c' for each (b the branch,
 * c its controlling pair; the stamp of a voltage-controlled voltage source behind its resistance, C.-W. Ho, A. E.
 * Ruehli, P. A. Brennan, 'The modified nodal approach to network analysis', IEEE Trans. Circuits Syst. 22(6), 1975).
 * S is factored as ever; with few such devices
 *   x = y - S^-1 U (I + V'S^-1 U)^-1 V'y,  y = S^-1 r,  and transposed with U and V exchanged
 * (M. A. Woodbury, 'Inverting modified matrices', 1950).
 */
import { type Numeric, solve } from "@loomwright/linalg";
import type { Branch } from "./circuit.js";
import { type Components, componentOf } from "./components.js";
import { CircuitError } from "./error.js";
import { across, column } from "./incidence.js";
import { solveSmall } from "./small.js";

export interface Control {
	readonly branch: number;
	/** The controlling pair. */
	readonly a: number;
	readonly b: number;
	/** Volts of the source per volt of the pair. */
	readonly gain: number;
	/** Standard deviation of `gain`. */
	readonly gainSpread: number;
}

/** Solves with the matrix and with its transpose, right-hand side in place. */
export interface Solves {
	solve(rhs: Float64Array): Float64Array;
	solveTransposed(rhs: Float64Array): Float64Array;
}

/** Controls that act: of a branch that conducts, by a pair with a difference of its own. */
export function acting(
	controls: readonly Control[],
	siemens: Float64Array,
	parts: Components,
): readonly Control[] {
	return controls.filter(
		({ branch, a, b, gain }) =>
			gain !== 0 && siemens[branch] !== 0 && componentOf(parts, a) === componentOf(parts, b),
	);
}

/**
 * Cost: two solves per control once, one solve per right-hand side.
 * @throws CircuitError where the sources drive each other so that no state is the only one
 */
export function solvesOf(
	numeric: Numeric,
	controls: readonly Control[],
	siemens: Float64Array,
	branches: readonly Branch[],
): Solves {
	const own = (rhs: Float64Array) => solve(numeric, rhs);
	const k = controls.length;
	if (k === 0) return { solve: own, solveTransposed: own };
	const driven = controls.map(({ branch }) => branches[branch]!);
	const weight = controls.map(({ branch, gain }) => -siemens[branch]! * gain);
	const byBranch = driven.map((branch) => column(numeric, branch));
	const byPair = controls.map((pair) => column(numeric, pair));
	const inverse = inverseOf(k, (i, j) => weight[j]! * across(byBranch[j]!, controls[i]!));
	if (inverse === undefined) {
		const parts = [...new Set(driven.map(({ owner }) => owner.id))];
		throw new CircuitError(`no single state: the sources of ${parts.join(", ")} drive each other`, parts);
	}
	return {
		solve(rhs) {
			own(rhs);
			const seen = controls.map((pair) => across(rhs, pair));
			byBranch.forEach((z, j) => {
				let s = 0;
				for (let i = 0; i < k; i++) s += inverse[j * k + i]! * seen[i]!;
				take(rhs, weight[j]! * s, z);
			});
			return rhs;
		},
		solveTransposed(rhs) {
			own(rhs);
			const seen = driven.map((branch, j) => weight[j]! * across(rhs, branch));
			byPair.forEach((z, j) => {
				let s = 0;
				for (let i = 0; i < k; i++) s += inverse[i * k + j]! * seen[i]!;
				take(rhs, s, z);
			});
			return rhs;
		},
	};
}

/** (I + M)^-1 by rows; undefined where it cannot be trusted. */
function inverseOf(k: number, m: (i: number, j: number) => number): Float64Array | undefined {
	const matrix = new Float64Array(k * k);
	const identity = new Float64Array(k * k);
	for (let i = 0; i < k; i++) {
		identity[i * k + i] = 1;
		for (let j = 0; j < k; j++) matrix[i * k + j] = identity[i * k + j]! + m(i, j);
	}
	return solveSmall(matrix, identity, k, k);
}

/** x -= factor z. */
function take(x: Float64Array, factor: number, z: Float64Array): void {
	for (let node = 0; node < x.length; node++) x[node]! -= factor * z[node]!;
}

/**
 * First-order sensitivity of a reading to every branch, by one adjoint solve.
 *
 * With A'x = w: d(w.v) / d ln R_k = g_k (x_a - x_b) (v_a - v_b - emf_k), d(w.v) / d emf_k = g_k (x_a - x_b).
 * For a resistance w'A^-1 w the same with v = x and no sources.
 * S. W. Director, R. A. Rohrer, 'The generalized adjoint network and network sensitivities', IEEE Trans. Circuit
 * Theory 16(3), 1969.
 */
import {
	branchAmps,
	type Control,
	type Operating,
	type Probe,
	type Topology,
	voltsAt,
} from "../circuit/index.js";

/** What one branch's scatter does to a reading. */
export interface Contribution {
	readonly branch: number;
	/** Standard deviation of the reading from this branch alone, in the reading's unit. */
	readonly deviation: number;
}

export interface Sensitivity {
	/** Contributions in branch order, zeros left out. */
	readonly contributions: readonly Contribution[];
	/** Standard deviation of the reading from all branches together, independent. */
	readonly deviation: number;
	/** Resistance in ohms seen by the meter's leads. */
	readonly sourceOhms: number;
}

/** Cost: one solve and O(branches). The probe must not read 'open'. */
export function sensitivity(point: Operating<Topology>, probe: Probe): Sensitivity {
	const contributions: Contribution[] = [];
	const sourceOhms = eachDeviation(point, probe, (branch, deviation) =>
		contributions.push({ branch, deviation }),
	);
	let square = 0;
	for (const { deviation } of contributions) square += deviation ** 2;
	return { contributions, deviation: Math.sqrt(square), sourceOhms };
}

/** Standard deviation of a reading alone, in its unit. */
export function deviationOf(point: Operating<Topology>, probe: Probe): number {
	let square = 0;
	eachDeviation(point, probe, (_branch, deviation) => {
		square += deviation ** 2;
	});
	return Math.sqrt(square);
}

/** Tells the deviation from each branch; returns the ohms seen by the meter. */
function eachDeviation(
	point: Operating<Topology>,
	probe: Probe,
	tell: (branch: number, deviation: number) => void,
): number {
	const { circuit, siemens, emf } = point;
	const { branches } = circuit;
	const controls = new Map(point.controls.map((control) => [control.branch, control]));
	const x = new Float64Array(circuit.nodes.length);
	const drive = (node: number, amount: number) => {
		if (node >= 0) x[node]! += amount;
	};
	if (probe.kind === "amps")
		for (const { branch, sign } of probe.branches) {
			const amount = sign * siemens[branch]!;
			drive(branches[branch]!.a, amount);
			drive(branches[branch]!.b, -amount);
			const follows = controls.get(branch);
			if (follows === undefined) continue;
			drive(follows.a, -amount * follows.gain);
			drive(follows.b, amount * follows.gain);
		}
	else {
		drive(probe.a, 1);
		drive(probe.b, -1);
	}
	point.solveTransposed(x);
	const own = new Map(probe.kind === "amps" ? probe.branches.map((b) => [b.branch, b.sign]) : []);
	for (let k = 0; k < branches.length; k++) {
		const g = siemens[k]!;
		if (g === 0) continue;
		const { a, b, spread, emfSpread } = branches[k]!;
		const adjoint = voltsAt(x, a) - voltsAt(x, b);
		const across =
			probe.kind === "ohms" ? adjoint : voltsAt(point.volts, a) - voltsAt(point.volts, b) - emf[k]!;
		let byResistance = g * adjoint * across * spread;
		const sign = own.get(k) ?? 0;
		byResistance -= sign * branchAmps(point, k) * spread;
		// In the branch's own current its source counts against the difference.
		const byEmf =
			probe.kind === "ohms" ? 0 : g * (adjoint - sign) * sourceSpread(point, k, emfSpread, controls);
		if (byResistance !== 0 || byEmf !== 0) tell(k, Math.sqrt(byResistance ** 2 + byEmf ** 2));
	}
	return probe.kind === "amps" ? 0 : voltsAt(x, probe.a) - voltsAt(x, probe.b);
}

/** Standard deviation of a branch's source in volts. */
function sourceSpread(
	{ volts }: Operating<Topology>,
	branch: number,
	emfSpread: number,
	controls: ReadonlyMap<number, Control>,
): number {
	const control = controls.get(branch);
	if (control === undefined) return emfSpread;
	return Math.hypot(emfSpread, control.gainSpread * (voltsAt(volts, control.a) - voltsAt(volts, control.b)));
}

/** What is looked at in a solved network: a potential difference, a current, a resistance. */
import type { Owner } from "../devices/index.js";
import type { Circuit, Topology } from "./circuit.js";
import { REFERENCE } from "./circuit.js";
import { pinNode, wireEndNode } from "./names.js";
import { type Operating, separated, voltsAt } from "./operating.js";
import { ohmsBetween } from "./resistance.js";

/** Two nodes; volts of `a` against `b`, or ohms between them. */
export interface PairProbe {
	readonly kind: "volts" | "ohms";
	readonly a: number;
	readonly b: number;
}

/** Sum of the currents of branches, each with the sign of its direction. */
export interface CurrentProbe {
	readonly kind: "amps";
	readonly branches: readonly { readonly branch: number; readonly sign: 1 | -1 }[];
}

export type Probe = PairProbe | CurrentProbe;

/**
 * Value of a probe at an operating point: volts, amperes or ohms; NaN where it reads 'open'.
 * Ohms need a point solved with `dead: true`.
 */
export function probeValue(point: Operating<Topology>, probe: Probe): number {
	if (probe.kind === "amps") {
		let sum = 0;
		for (const { branch, sign } of probe.branches) sum += sign * branchAmps(point, branch);
		return sum;
	}
	if (probe.a === probe.b) return 0;
	if (separated(point, probe.a, probe.b)) return Number.NaN;
	if (probe.kind === "volts") return voltsAt(point.volts, probe.a) - voltsAt(point.volts, probe.b);
	return ohmsBetween(point, probe.a, probe.b);
}

/** Current from the branch's first node to its second, in amperes. */
export function branchAmps(point: Operating<Topology>, branch: number): number {
	const { a, b } = point.circuit.branches[branch]!;
	const across = voltsAt(point.volts, a) - voltsAt(point.volts, b);
	return point.siemens[branch]! * (across - point.emf[branch]!);
}

/**
 * Current that flows from `from` to `to` in what joins them directly: a wire between the two contacts, or
 * the device whose pins they are. Undefined where nothing does.
 */
export function currentBetween(circuit: Circuit, from: string, to: string): CurrentProbe | undefined {
	const found: { branch: number; sign: 1 | -1 }[] = [];
	for (const wire of circuit.loom.wires.values()) {
		const ends = [wire.from, wire.to].map((end) =>
			end.at === "contact" ? end.contact : end.at === "joint" ? end.joint : "",
		);
		const sign = ends[0] === from && ends[1] === to ? 1 : ends[0] === to && ends[1] === from ? -1 : 0;
		if (sign === 0) continue;
		const start = circuit.node(wireEndNode(wire.id, "from"));
		const branch = circuit.branchesOf
			.get(wire.id)
			?.find((k) => circuit.branches[k]!.a === start && circuit.branches[k]!.owner.what === "wire");
		if (branch !== undefined) found.push({ branch, sign });
	}
	if (found.length > 0) return { kind: "amps", branches: found };
	const a = circuit.node(pinNode(from)) ?? REFERENCE;
	const b = circuit.node(pinNode(to)) ?? REFERENCE;
	if (a < 0 || b < 0) return undefined;
	circuit.branches.forEach((branch, k) => {
		if (branch.owner.what !== "device" || (branch.a !== a && branch.b !== a)) return;
		const far = branch.a === a ? branch.b : branch.a;
		if (far === b || goesOn(circuit, branch.owner, far, b))
			found.push({ branch: k, sign: branch.a === a ? 1 : -1 });
	});
	return found.length > 0 ? { kind: "amps", branches: found } : undefined;
}

/** True where the same element of a device goes on from a point inside to a pin: a coil looked at across a part of it. */
function goesOn(circuit: Circuit, { id, element }: Owner, inside: number, pin: number): boolean {
	return circuit.branchesOf.get(id)!.some((k) => {
		const { a, b, owner } = circuit.branches[k]!;
		return owner.element === element && ((a === inside && b === pin) || (b === inside && a === pin));
	});
}

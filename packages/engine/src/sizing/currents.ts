/** What each conductor carries: the most in any condition, while the starter turns, and when loads are switched on. */
import { branchAmps, type Circuit } from "../circuit/index.js";
import { inrushAmps } from "../devices/index.js";
import { downstream, upstream } from "../rules/support/flow.js";
import { loadedIn } from "../rules/support/heat.js";
import { acrossLoad, cranks, type Load, loadsOf } from "../rules/support/loads.js";
import { type Settled, wholeConditions } from "../rules/support/points.js";

/** Starting current of a motor, times its running current: terminal-practice.csv 027 (common practice, no source). */
export const MOTOR_START = 6;
/** Below this a current is rounding. */
const LEAST_AMPS = 1e-6;
/** A load below these volts is off. */
const OFF_VOLTS = 1;

export interface Peak {
	readonly amps: number;
	/** Empty: it carries nothing in any condition. */
	readonly condition: string;
}

export interface Currents {
	/** Lasting: every listed condition in which the car stands whole and the starter is at rest. */
	readonly steady: Peak;
	/** The starter's conditions included: seconds. */
	readonly brief: Peak;
	/** All lamps behind it switched on together, cold: hundredths of a second. */
	readonly rush: Peak;
	/** All motors behind it started together: tenths of a second. */
	readonly start: Peak;
}

const NOTHING: Peak = { amps: 0, condition: "" };
export const NO_CURRENTS: Currents = { steady: NOTHING, brief: NOTHING, rush: NOTHING, start: NOTHING };

/** By branch number; a branch that is not in it carries nothing. */
export function currentsOf(circuit: Circuit): ReadonlyMap<number, Currents> {
	const found = new Map<number, Currents>();
	const put = (branch: number, key: keyof Currents, amps: number, condition: string) => {
		const known = found.get(branch) ?? NO_CURRENTS;
		if (amps > known[key].amps) found.set(branch, { ...known, [key]: { amps, condition } });
	};
	for (const at of wholeConditions(circuit)) {
		const { point, condition } = at;
		const starting = cranks(circuit, at);
		const rush = moreOnTheWay(circuit, at, "lamp");
		const start = moreOnTheWay(circuit, at, "motor");
		circuit.branches.forEach(({ owner }, branch) => {
			if (owner.what !== "wire" && owner.what !== "device") return;
			const amps = Math.abs(branchAmps(point, branch));
			if (amps < LEAST_AMPS) return;
			put(branch, "brief", amps, condition);
			if (starting) return;
			put(branch, "steady", amps, condition);
			put(branch, "rush", amps + (rush.get(branch) ?? 0), condition);
			put(branch, "start", amps + (start.get(branch) ?? 0), condition);
		});
	}
	return found;
}

/** Most loaded wires in each bundle in any one lasting condition. */
export function loadedWires(circuit: Circuit): ReadonlyMap<string, number> {
	const most = new Map<string, number>();
	for (const at of wholeConditions(circuit)) {
		if (cranks(circuit, at)) continue;
		for (const [bundle, wires] of loadedIn(at.point))
			most.set(bundle, Math.max(wires, most.get(bundle) ?? 0));
	}
	return most;
}

/** Amperes above the steady ones, by branch on the way of each load of a kind that is on. */
function moreOnTheWay(circuit: Circuit, { point }: Settled, kind: string): Map<number, number> {
	const found = new Map<number, number>();
	for (const load of loadsOf(circuit)) {
		if (load.part.kind !== kind) continue;
		const volts = acrossLoad(point, load);
		const more = Math.abs(volts) > OFF_VOLTS ? moreAtFirst(load, volts, branchAmps(point, load.branch)) : 0;
		if (more <= 0) continue;
		const { a, b } = circuit.branches[load.branch]!;
		const [plus, minus] = volts > 0 ? [a, b] : [b, a];
		for (const branch of [...upstream(point, plus).branches, ...downstream(point, minus).branches])
			found.set(branch, (found.get(branch) ?? 0) + more);
	}
	return found;
}

function moreAtFirst({ part }: Load, volts: number, amps: number): number {
	return part.kind === "lamp" ? inrushAmps(part, volts) - Math.abs(amps) : (MOTOR_START - 1) * Math.abs(amps);
}

/** Loads that worked in the car as delivered, against the same loads in the same conditions now. */
import { branchAmps, type Circuit, type Operating } from "../../circuit/index.js";
import { downstream, upstream } from "./flow.js";
import { acrossLoad, type Load, loadsOf } from "./loads.js";
import { wholeConditions } from "./points.js";

/** A load works from this share of the highest potential across it. */
const WORKS = 0.6;
/** It stopped working below this share of what it had. */
const LOST = 0.5;
/** Volts below which a load is off. */
const OFF_VOLTS = 1;
/** Amperes below which a load is off, whatever its volts: a blocking LED or coil draws nothing. */
const OFF_AMPS = 1e-4;

/** A load in one condition as delivered and as it stands now. */
export interface Compared {
	readonly load: Load;
	readonly condition: string;
	readonly before: {
		readonly point: Operating;
		readonly load: Load;
		readonly volts: number;
		/** The highest potential in the car. */
		readonly system: number;
	};
	readonly now: { readonly point: Operating; readonly volts: number };
}

/** Each load that works in a whole condition as delivered and no longer does; in its first such condition. */
export function lostLoads(circuit: Circuit, before: Circuit): readonly Compared[] {
	return compared(
		circuit,
		before,
		({ before: was, now }) => was.volts >= WORKS * was.system && now.volts < LOST * was.volts,
	);
}

/** Each load that is off in a whole condition as delivered and has current now. */
export function gainedLoads(circuit: Circuit, before: Circuit): readonly Compared[] {
	return compared(circuit, before, ({ load, before: was, now }) => {
		const amps = Math.abs(branchAmps(now.point, load.branch));
		return was.volts < OFF_VOLTS && now.volts > 2 * OFF_VOLTS && amps > OFF_AMPS;
	});
}

function compared(circuit: Circuit, before: Circuit, differs: (one: Compared) => boolean): Compared[] {
	const known = keyed(before);
	const points = new Map(wholeConditions(before).map(({ condition, point }) => [condition, point]));
	const own = keyed(circuit);
	const found = new Map<Load, Compared>();
	for (const { condition, point } of wholeConditions(circuit)) {
		const was = points.get(condition);
		if (was === undefined) continue;
		const system = was.volts.reduce((most, volts) => Math.max(most, volts), 0);
		for (const [key, load] of own) {
			const old = known.get(key);
			if (old === undefined || found.has(load)) continue;
			const one: Compared = {
				load,
				condition,
				before: { point: was, load: old, volts: Math.abs(acrossLoad(was, old)), system },
				now: { point, volts: Math.abs(acrossLoad(point, load)) },
			};
			if (differs(one)) found.set(load, one);
		}
	}
	return [...found.values()];
}

/** Loads by part and element; a coil is two elements of one name. */
function keyed(circuit: Circuit): Map<string, Load> {
	const found = new Map<string, Load>();
	for (const load of loadsOf(circuit)) {
		const name = `${load.part.id} ${circuit.branches[load.branch]!.owner.element}`;
		found.set(found.has(name) ? `${name} again` : name, load);
	}
	return found;
}

/** Ids of contacts, joints, wires and parts that carried the load's current as delivered, from supply to ground. */
export function carriedBy({ before }: Compared, names: (branches: readonly number[]) => string[]): string[] {
	const { point, load } = before;
	const { a, b } = point.circuit.branches[load.branch]!;
	const [plus, minus] = acrossLoad(point, load) > 0 ? [a, b] : [b, a];
	return [
		...names(upstream(point, plus).branches.toReversed()),
		load.part.id,
		...names(downstream(point, minus).branches),
	];
}

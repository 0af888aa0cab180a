/** What each load gets: the volts its feed and its ground lose, at worst, against what is allowed. */
import { branchAmps, type Circuit, voltsAt } from "../circuit/index.js";
import { downstream, fromPosts, lossAlong, upstream } from "../rules/support/flow.js";
import { acrossLoad, cranks, type Load, loadsOf } from "../rules/support/loads.js";
import { wholeConditions } from "../rules/support/points.js";
import { LIMITS } from "../rules/voltage-drop.js";

export interface LoadSize {
	readonly part: string;
	/** What of the part; empty where the part is the load. */
	readonly element: string;
	readonly condition: string;
	readonly amps: number;
	/** Across the load. */
	readonly volts: number;
	readonly feedVolts: number;
	readonly groundVolts: number;
	/** Allowed together; undefined where only one side is judged. */
	readonly mostVolts: number | undefined;
	readonly suffices: boolean;
}

/** A load works from this share of the highest potential across it, and this current. */
const WORKING_SHARE = 0.3;
const LEAST_AMPS = 1e-4;

/** Each load that works in some whole condition, in the one in which it loses most. */
export function sizeLoads(circuit: Circuit): LoadSize[] {
	const worst = new Map<Load, LoadSize>();
	for (const at of wholeConditions(circuit)) {
		const { point, condition } = at;
		const system = point.volts.reduce((most, volts) => Math.max(most, volts), 0);
		const starting = cranks(circuit, at);
		for (const load of loadsOf(circuit)) {
			const volts = Math.abs(acrossLoad(point, load));
			const ofStarter = load.kind === "starter motor" || load.kind === "terminal 50";
			if (ofStarter !== starting || volts <= WORKING_SHARE * system) continue;
			if (Math.abs(branchAmps(point, load.branch)) < LEAST_AMPS) continue;
			const { a, b } = circuit.branches[load.branch]!;
			const amps = branchAmps(point, load.branch);
			const [plus, minus] = amps > 0 ? [a, b] : [b, a];
			const [feed, ground] = [upstream(point, plus), downstream(point, minus)];
			if (!feed.arrived || !ground.arrived) continue;
			const feedVolts = lossAlong(point, fromPosts(point, "feed", feed.branches));
			const groundVolts = lossAlong(point, fromPosts(point, "ground", ground.branches));
			if (feedVolts + groundVolts <= lost(worst.get(load))) continue;
			const limit = LIMITS[load.kind];
			const mostVolts = limit.share && limit.share * voltsAt(point.volts, feed.end);
			const mostGround = Math.max(limit.ground ?? 0, (Math.abs(amps) / 100) * (limit.groundPer100A ?? 0));
			const suffices =
				feedVolts <= (limit.feed ?? Number.POSITIVE_INFINITY) &&
				(limit.ground === undefined || groundVolts <= mostGround) &&
				(mostVolts === undefined || feedVolts + groundVolts <= mostVolts);
			worst.set(load, {
				...{ part: load.part.id, element: load.element, condition, amps: Math.abs(amps), volts },
				...{ feedVolts, groundVolts, mostVolts, suffices },
			});
		}
	}
	return [...worst.values()];
}

const lost = (one: LoadSize | undefined) => (one ? one.feedVolts + one.groundVolts : -1);

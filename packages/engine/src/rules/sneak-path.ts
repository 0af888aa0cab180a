/** No current may take a way through a load that is meant to be off. */
import { branchAmps, type Circuit, type Operating, voltsAt } from "../circuit/index.js";
import { finding } from "./support/finding.js";
import { downstream, upstream } from "./support/flow.js";
import { acrossLoad, type Load, loadsOf } from "./support/loads.js";
import { wholeConditions } from "./support/points.js";
import { namesAlong } from "./support/ways.js";
import { amount, list, partText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "sneak-path";

/** Least volts across a load that has current by a sneak path. */
const LEAST_VOLTS = 0.5;
/** And least share of what it would draw at full volts. */
const LEAST_AMPS = 0.005;

/**
 * In every listed condition in which the car stands whole: a load whose current came through another load, or goes on
 * through one. Both then have part of the volts and neither is meant to: a lamp glows, a relay holds, a unit is kept
 * half awake. One finding a pair.
 */
export const sneakPath: Rule = {
	id,
	title: "No current sneaks through a lamp, coil or unit that is off",
	source: "two loads in series: common practice, no source",
	check(circuit) {
		const byBranch = new Map(loadsOf(circuit).map((load) => [load.branch, load]));
		const found = new Map<string, Finding>();
		for (const { condition, point } of wholeConditions(circuit))
			for (const load of loadsOf(circuit)) {
				if (!hasCurrent(point, load)) continue;
				const { a, b } = circuit.branches[load.branch]!;
				const [plus, minus] = acrossLoad(point, load) > 0 ? [a, b] : [b, a];
				const feed = upstream(point, plus).branches;
				const ground = downstream(point, minus).branches;
				const others = [...feed, ...ground].flatMap((branch) => byBranch.get(branch) ?? []);
				const other = others.find((one) => one.part !== load.part);
				if (other === undefined) continue;
				const key = [load.part.id, other.part.id].sort().join();
				if (!found.has(key)) found.set(key, report(circuit, { load, other, condition, point, feed, ground }));
			}
		return [...found.values()];
	},
};

function hasCurrent(point: Operating, load: Load): boolean {
	return (
		Math.abs(acrossLoad(point, load)) > LEAST_VOLTS && Math.abs(branchAmps(point, load.branch)) > LEAST_AMPS
	);
}

interface Sneak {
	readonly load: Load;
	readonly other: Load;
	readonly condition: string;
	readonly point: Operating;
	readonly feed: readonly number[];
	readonly ground: readonly number[];
}

function report(circuit: Circuit, { load, other, condition, point, feed, ground }: Sneak): Finding {
	const { a, b } = circuit.branches[load.branch]!;
	const volts = Math.abs(voltsAt(point.volts, a) - voltsAt(point.volts, b));
	const names = [load, other].map(({ part }) => partText(circuit.loom, part.id));
	return finding(circuit, id, "warn", {
		where: list(names),
		why: `In '${condition}' one current of ${amount(Math.abs(branchAmps(point, load.branch)), "A")} runs through both: ${load.part.id} has ${amount(volts, "V")} by way of ${other.part.id}.`,
		mend: "Part the two on the way shown: the load that is off has lost its own ground or feed, or is joined where it should not be.",
		path: [...namesAlong(circuit, feed.toReversed()), load.part.id, ...namesAlong(circuit, ground)],
	});
}

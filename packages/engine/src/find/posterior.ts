/**
 * Posterior of every fault: prior times likelihood of all that was seen, exact within the listed hypotheses.
 *
 * A steady fault shows one pattern throughout: its likelihood is sum_p w_p prod_items L. A fault that reseating
 * shakes shows a new pattern after each reseating of its connector: the product over runs of such sums.
 */
import type { Fault, Pattern } from "../faults/index.js";
import type { Item } from "./items.js";
import type { Evidence } from "./types.js";

export interface Weighed {
	/** Undefined: the loom is sound. */
	readonly fault: Fault | undefined;
	readonly posterior: number;
	/** Log likelihood of all evidence. */
	readonly log: number;
	/** Chance of each pattern after the evidence of the last run. */
	readonly patterns: readonly { readonly pattern: Pattern; readonly chance: number }[];
}

export const SOUND_PATTERN: Pattern = { weight: 1, change: { branches: [], added: [] } };

/** Occasion numbers in runs between which a part was reseated. */
function runsOf(evidence: Evidence, shakenBy: string): number[][] {
	const runs: number[][] = [[]];
	evidence.occasions.forEach((occasion, k) => {
		if (k > 0 && shakenBy !== "" && occasion.reseated === shakenBy) runs.push([]);
		runs.at(-1)!.push(k);
	});
	return runs;
}

/** log(sum of exp), safe for large negative terms. */
function logSum(terms: readonly number[]): number {
	const most = Math.max(...terms);
	if (most === Number.NEGATIVE_INFINITY) return most;
	let sum = 0;
	for (const term of terms) sum += Math.exp(term - most);
	return most + Math.log(sum);
}

function weigh(fault: Fault | undefined, items: readonly Item[], evidence: Evidence): Omit<Weighed, "posterior"> {
	const patterns = fault?.patterns ?? [SOUND_PATTERN];
	let log = 0;
	let last: number[] = [];
	for (const run of runsOf(evidence, fault?.shakenBy ?? "")) {
		const own = items.filter((item) => run.includes(item.occasion));
		last = patterns.map((pattern) => {
			let sum = Math.log(pattern.weight);
			for (const item of own) sum += item.log(fault, pattern);
			return sum;
		});
		log += logSum(last);
	}
	const total = logSum(last);
	return {
		fault,
		log,
		patterns: patterns.map((pattern, k) => ({ pattern, chance: Math.exp(last[k]! - total) })),
	};
}

/** All hypotheses, most probable first; posteriors sum to 1. */
export function posterior(faults: readonly Fault[], items: readonly Item[], evidence: Evidence): Weighed[] {
	const weighed = [undefined, ...faults].map((fault) => weigh(fault, items, evidence));
	const logs = weighed.map((w) => w.log + Math.log(w.fault?.prior ?? 1));
	const total = logSum(logs);
	return weighed
		.map((w, k) => ({ ...w, posterior: Math.exp(logs[k]! - total) }))
		.sort((x, y) => y.posterior - x.posterior);
}

/** How many times as likely each item is under a fault as on a sound car, the fault's own patterns weighted. */
export function timesAsLikely(w: Weighed, items: readonly Item[]): { item: Item; times: number }[] {
	return items.map((item) => {
		const sound = item.log(undefined, SOUND_PATTERN);
		const here = logSum((w.fault?.patterns ?? [SOUND_PATTERN]).map((p) => Math.log(p.weight) + item.log(w.fault, p)));
		return { item, times: Math.exp(here - sound) };
	});
}

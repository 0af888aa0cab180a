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

/** Log likelihood of some items under each pattern, by run, weights not included. */
function patternLogs(
	fault: Fault | undefined,
	patterns: readonly Pattern[],
	runs: readonly (readonly number[])[],
	items: readonly Item[],
): number[][] {
	return runs.map((run) => {
		const own = items.filter((item) => run.includes(item.occasion));
		return patterns.map((pattern) => {
			let sum = 0;
			for (const item of own) sum += item.log(fault, pattern);
			return sum;
		});
	});
}

/** A hypothesis while it is weighed: what the telling items say, then all of them. */
interface Weighing {
	readonly fault: Fault | undefined;
	readonly patterns: readonly Pattern[];
	readonly runs: readonly (readonly number[])[];
	readonly logs: number[][];
	readonly prior: number;
}

/** Log of prior times likelihood of the items weighed so far. */
function total({ logs, patterns, prior }: Weighing): number {
	let sum = prior;
	for (const run of logs) sum += logSum(run.map((log, p) => Math.log(patterns[p]!.weight) + log));
	return sum;
}

function weighMore(w: Weighing, items: readonly Item[]): void {
	patternLogs(w.fault, w.patterns, w.runs, items).forEach((run, r) => {
		run.forEach((log, p) => {
			w.logs[r]![p]! += log;
		});
	});
}

/**
 * Prior of 'no fault of the loom explains this', against the priors of the faults: the person asks because
 * something is wrong. Common practice, no source.
 */
const SOUND = 0.02;
/** A fault must make the telling items at least so many times likelier than a sound car does, or it explains nothing. */
const EXPLAINS = 3;
/** So many of the best are weighed to the end first, to know how good the best is. */
const FIRST = 40;
/** Share of the best hypothesis that all those let go may weigh together, by their upper bounds. */
const LET_GO = 1e-4;

/**
 * Conditions by how much they tell, and the items of the most telling one, which every hypothesis is asked first.
 * Items that need no solve belong to it.
 */
function mostTelling(items: readonly Item[]): string {
	const count = new Map<string, number>();
	for (const item of items) if (item.telling) count.set(item.when, (count.get(item.when) ?? 0) + 1);
	count.delete("");
	return [...count].sort((x, y) => y[1] - x[1])[0]?.[0] ?? "";
}

/**
 * All hypotheses that explain something, most probable first; posteriors sum to 1. The sound car stands for every
 * fault that does not show in what was seen. Log likelihoods of items are at most 0 (densities of readings are taken
 * against the sharpest there is), so what is weighed so far is an upper bound, and hypotheses far below the best are
 * let go by it.
 */
export function posterior(faults: readonly Fault[], items: readonly Item[], evidence: Evidence): Weighed[] {
	const when = mostTelling(items);
	const early = items.filter((item) => item.telling && (item.when === when || item.when === ""));
	const late = items.filter((item) => item.telling && !early.includes(item));
	const rest = items.filter((item) => !item.telling);
	const begin = (fault: Fault | undefined): Weighing => {
		const patterns = fault?.patterns ?? [SOUND_PATTERN];
		const runs = runsOf(evidence, fault?.shakenBy ?? "");
		const logs = patternLogs(fault, patterns, runs, early);
		return { fault, patterns, runs, logs, prior: Math.log(fault?.prior ?? SOUND) };
	};
	const sound = begin(undefined);
	const explaining = faults.map(begin);
	const bounds = new Map(explaining.map((w) => [w, total(w)]));
	const bound = (w: Weighing) => bounds.get(w)!;
	explaining.sort((x, y) => bound(y) - bound(x));
	const telling = early.length + late.length > 0;
	let soundTelling = Number.NEGATIVE_INFINITY;
	const ends = new Map<Weighing, number>();
	/** Weighs a hypothesis to the end; one that explains nothing of what tells stands with the sound car. */
	const finish = (w: Weighing): number => {
		weighMore(w, late);
		const told = total(w) - w.prior;
		if (w === sound) soundTelling = told;
		else if (telling && told < soundTelling + Math.log(EXPLAINS)) return Number.NEGATIVE_INFINITY;
		weighMore(w, rest);
		const end = total(w);
		ends.set(w, end);
		return end;
	};
	let best = finish(sound);
	for (const w of explaining.slice(0, FIRST)) best = Math.max(best, finish(w));
	const others = explaining.slice(FIRST);
	let gone = 0;
	while (others.length > 0) {
		gone += Math.exp(bound(others.at(-1)!) - best);
		if (gone > LET_GO) break;
		others.pop();
	}
	for (const w of others) finish(w);
	const all = logSum([...ends.values()]);
	return [...ends]
		.map(([w, end]): Weighed => {
			const last = w.logs.at(-1)!.map((log, p) => Math.log(w.patterns[p]!.weight) + log);
			const sum = logSum(last);
			return {
				fault: w.fault,
				posterior: Math.exp(end - all),
				patterns: w.patterns.map((pattern, p) => ({ pattern, chance: Math.exp(last[p]! - sum) })),
			};
		})
		.sort((x, y) => y.posterior - x.posterior);
}

/** How many times as likely each item is under a fault as on a sound car, the fault's own patterns weighted. */
export function timesAsLikely(w: Weighed, items: readonly Item[]): { item: Item; times: number }[] {
	return items.map((item) => {
		const sound = item.log(undefined, SOUND_PATTERN);
		const here = logSum(
			(w.fault?.patterns ?? [SOUND_PATTERN]).map((p) => Math.log(p.weight) + item.log(w.fault, p)),
		);
		return { item, times: Math.exp(here - sound) };
	});
}

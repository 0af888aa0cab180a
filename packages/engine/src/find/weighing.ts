/** One hypothesis on the scales: what the evidence says of each of its patterns, run by run. */
import type { Fault, Pattern } from "../faults/index.js";
import type { Item } from "./items.js";
import type { Evidence } from "./types.js";

export interface Weighed {
	/** Undefined: the loom is sound. */
	readonly fault: Fault | undefined;
	readonly posterior: number;
	/** Number of its first pattern among all patterns of the car; -1: not numbered. */
	readonly first: number;
	/** Chance that it comes and goes rather than being there all the time; 0 where only one occasion was seen. */
	readonly comesAndGoes: number;
	/** Chance of each pattern after the evidence of the last run. */
	readonly patterns: readonly { readonly pattern: Pattern; readonly chance: number }[];
}

/** The sound car, as a hypothesis. */
export const NO_FAULT = { fault: undefined, first: -1 } as const;

export const SOUND_PATTERN: Pattern = { weight: 1, change: { branches: [], added: [] } };

/** Occasion numbers in runs between which a part was reseated. */
export function runsOf(evidence: Evidence, shakenBy: string): number[][] {
	const runs: number[][] = [[]];
	evidence.occasions.forEach((occasion, k) => {
		if (k > 0 && shakenBy !== "" && occasion.reseated === shakenBy) runs.push([]);
		runs.at(-1)!.push(k);
	});
	return runs;
}

/** log(sum of exp), safe for large negative terms. */
export function logSum(terms: readonly number[]): number {
	let most = Number.NEGATIVE_INFINITY;
	for (const term of terms) if (term > most) most = term;
	if (most === Number.NEGATIVE_INFINITY) return most;
	let sum = 0;
	for (const term of terms) sum += Math.exp(term - most);
	return most + Math.log(sum);
}

const byOccasion = new WeakMap<readonly Item[], Item[][]>();

/** Items of some occasions; split up once for each list of items. */
function inRun(items: readonly Item[], run: readonly number[]): readonly Item[] {
	let split = byOccasion.get(items);
	if (split === undefined) {
		split = [];
		for (const item of items) {
			split[item.occasion] ??= [];
			split[item.occasion]!.push(item);
		}
		byOccasion.set(items, split);
	}
	const [only, ...more] = run;
	if (more.length === 0) return split[only!] ?? [];
	return run.flatMap((k) => split[k] ?? []);
}

/**
 * Log likelihood of some items under each pattern, by run, weights not included.
 * @param first number of the first pattern among all patterns of the car; -1: not numbered
 */
export function patternLogs(
	fault: Fault | undefined,
	patterns: readonly Pattern[],
	runs: readonly (readonly number[])[],
	items: readonly Item[],
	first: number,
): number[][] {
	return runs.map((run) => {
		const own = runs.length === 1 ? items : inRun(items, run);
		return patterns.map((pattern, p) => {
			const at = first < 0 ? first : first + p;
			let sum = 0;
			for (let k = 0; k < own.length; k++) sum += own[k]!.log(fault, pattern, at);
			return sum;
		});
	});
}

/** What a fault that is there at one time and not at another needs to be weighed. */
interface Comes {
	/** Share of such faults that come and go. */
	readonly share: number;
	/** Log likelihood of each occasion on a sound car. */
	readonly sound: readonly number[];
}

/** Chance that a fault that comes and goes is there on an occasion. Common practice, no source. */
const THERE = 0.5;

/** A hypothesis while it is weighed: what the telling items say, then all of them. */
export interface Weighing {
	readonly fault: Fault | undefined;
	readonly patterns: readonly Pattern[];
	readonly runs: readonly (readonly number[])[];
	readonly logs: number[][];
	readonly prior: number;
	/** Number of its first pattern among all patterns of the car; -1: not numbered. */
	readonly first: number;
	/** Items not weighed yet under a pattern that was put off, by run and pattern. */
	readonly owed: Map<number, (readonly Item[])[]>;
	/** For a fault that may come and go: each occasion is then a run of its own. */
	readonly comes: Comes | undefined;
	/** Log of prior times likelihood of the items it began with: no item makes it more than this. */
	readonly bound: number;
}

/** Log of prior times likelihood of the items weighed so far. */
export function total(w: Omit<Weighing, "bound">): number {
	const { logs, patterns, prior, comes } = w;
	let sum = prior;
	if (comes) {
		const [steady, coming] = ways(w, comes);
		return sum + logSum([steady, coming]);
	}
	if (patterns.length === 1) {
		for (const run of logs) sum += run[0]!;
		return sum;
	}
	for (const run of logs) sum += logSum(run.map((log, p) => Math.log(patterns[p]!.weight) + log));
	return sum;
}

/**
 * Log likelihoods of being there all the time, and of coming and going, shares included:
 * sum_p w_p prod_o L_op, and sum_p w_p prod_o (q L_op + (1 - q) L_o,sound).
 */
function ways({ logs, patterns }: Omit<Weighing, "bound">, { share, sound }: Comes): [number, number] {
	const steady: number[] = [];
	const coming: number[] = [];
	for (let p = 0; p < patterns.length; p++) {
		const weight = Math.log(patterns[p]!.weight);
		let all = weight;
		let some = weight;
		for (let k = 0; k < logs.length; k++) {
			const there = logs[k]![p]!;
			all += there;
			some += logSum([Math.log(THERE) + there, Math.log(1 - THERE) + sound[k]!]);
		}
		steady.push(all);
		coming.push(some);
	}
	return [Math.log(1 - share) + logSum(steady), Math.log(share) + logSum(coming)];
}

/** Chance that it comes and goes, by what was weighed so far. */
export function comesAndGoes(w: Weighing): number {
	if (w.comes === undefined) return 0;
	const [steady, coming] = ways(w, w.comes);
	const sum = logSum([steady, coming]);
	return sum === Number.NEGATIVE_INFINITY ? w.comes.share : Math.exp(coming - sum);
}

/** A pattern so far (log) below the best of its hypothesis is put off: it stays an upper bound. */
const HOPELESS = 16;

/** Weighs further items; patterns put off are weighed after all once the others have come down to their bounds. */
export function weighMore(w: Weighing, items: readonly Item[]): void {
	if (items.length === 0) return;
	const { fault, patterns, runs, logs, first, comes, owed } = w;
	runs.forEach((run, r) => {
		const own = runs.length === 1 ? items : inRun(items, run);
		const sums = logs[r]!;
		// What comes and goes is judged over all occasions, so none of its patterns can be put off on one.
		const least = comes ? Number.NEGATIVE_INFINITY : Math.max(...sums) - HOPELESS;
		const weigh = (p: number, list: readonly Item[]) => {
			const at = first < 0 ? first : first + p;
			for (let k = 0; k < list.length; k++) sums[p]! += list[k]!.log(fault, patterns[p]!, at);
		};
		let best = Number.NEGATIVE_INFINITY;
		for (let p = 0; p < sums.length; p++) {
			const key = r * sums.length + p;
			const before = owed.get(key);
			if (before || sums[p]! < least) owed.set(key, [...(before ?? []), own]);
			else {
				weigh(p, own);
				best = Math.max(best, sums[p]!);
			}
		}
		if (owed.size === 0) return;
		for (let p = 0; p < sums.length; p++) {
			const key = r * sums.length + p;
			const lists = owed.get(key);
			if (!lists || sums[p]! < best - HOPELESS) continue;
			for (const list of lists) weigh(p, list);
			owed.delete(key);
			best = Math.max(best, sums[p]!);
		}
	});
}

/**
 * A hypothesis with the first items weighed.
 * @param prior its chance before evidence
 * @param first as in `patternLogs`
 * @param sound log likelihood of each occasion on a sound car; without it no fault is taken to come and go
 */
export function beginWeighing(
	fault: Fault | undefined,
	prior: number,
	items: readonly Item[],
	evidence: Evidence,
	first = -1,
	sound?: readonly number[],
): Weighing {
	const patterns = fault?.patterns ?? [SOUND_PATTERN];
	const share = evidence.occasions.length > 1 ? (fault?.comesAndGoes ?? 0) : 0;
	const comes = share > 0 && sound ? { share, sound } : undefined;
	const runs = comes ? evidence.occasions.map((_, k) => [k]) : runsOf(evidence, fault?.shakenBy ?? "");
	const logs = patternLogs(fault, patterns, runs, items, first);
	const begun = { fault, patterns, runs, logs, prior: Math.log(prior), first, comes, owed: new Map() };
	return { ...begun, bound: total(begun) };
}

/** Log likelihood of one item under a hypothesis, its patterns weighted. */
export function itemLog(
	{ fault, first }: { readonly fault: Fault | undefined; readonly first: number },
	item: Item,
): number {
	const patterns = fault?.patterns ?? [SOUND_PATTERN];
	if (patterns.length === 1) return item.log(fault, patterns[0]!, first);
	const log = (pattern: Pattern, p: number) => item.log(fault, pattern, first < 0 ? first : first + p);
	return logSum(patterns.map((pattern, p) => Math.log(pattern.weight) + log(pattern, p)));
}

/** Chance of each pattern after what was weighed of the last run, or, of a fault that may come and go, of all occasions. */
export function patternChances({ logs, patterns, comes }: Weighing): Weighed["patterns"] {
	const seen = comes ? patterns.map((_, p) => logs.reduce((sum, run) => sum + run[p]!, 0)) : logs.at(-1)!;
	const last = seen.map((log, p) => Math.log(patterns[p]!.weight) + log);
	const sum = logSum(last);
	// Nothing seen is possible under it: what was seen says nothing of its patterns.
	if (sum === Number.NEGATIVE_INFINITY)
		return patterns.map((pattern) => ({ pattern, chance: pattern.weight }));
	return patterns.map((pattern, p) => ({ pattern, chance: Math.exp(last[p]! - sum) }));
}

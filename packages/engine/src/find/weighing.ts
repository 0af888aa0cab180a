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
		const own = runs.length === 1 ? items : items.filter((item) => run.includes(item.occasion));
		return patterns.map((pattern, p) => {
			const at = first < 0 ? first : first + p;
			let sum = 0;
			for (let k = 0; k < own.length; k++) sum += own[k]!.log(fault, pattern, at);
			return sum;
		});
	});
}

/** A hypothesis while it is weighed: what the telling items say, then all of them. */
export interface Weighing {
	readonly fault: Fault | undefined;
	readonly patterns: readonly Pattern[];
	readonly runs: readonly (readonly number[])[];
	readonly logs: number[][];
	readonly prior: number;
	/** Number of its first pattern among all patterns of the car; -1: not numbered. */
	readonly first: number;
	/** Log of prior times likelihood of the items it began with: no item makes it more than this. */
	readonly bound: number;
}

/** Log of prior times likelihood of the items weighed so far. */
export function total({ logs, patterns, prior }: Omit<Weighing, "bound">): number {
	let sum = prior;
	if (patterns.length === 1) {
		for (const run of logs) sum += run[0]!;
		return sum;
	}
	for (const run of logs) sum += logSum(run.map((log, p) => Math.log(patterns[p]!.weight) + log));
	return sum;
}

/** A pattern so far (log) below the best of its hypothesis is weighed no further: it stays an upper bound. */
const HOPELESS = 16;

export function weighMore(w: Weighing, items: readonly Item[]): void {
	if (items.length === 0) return;
	const { fault, patterns, runs, logs, first } = w;
	runs.forEach((run, r) => {
		const own = runs.length === 1 ? items : items.filter((item) => run.includes(item.occasion));
		const sums = logs[r]!;
		const least = Math.max(...sums) - HOPELESS;
		for (let p = 0; p < sums.length; p++) {
			if (sums[p]! < least) continue;
			const at = first < 0 ? first : first + p;
			for (let k = 0; k < own.length; k++) sums[p]! += own[k]!.log(fault, patterns[p]!, at);
		}
	});
}

/**
 * A hypothesis with the first items weighed.
 * @param prior its chance before evidence
 * @param first as in `patternLogs`
 */
export function beginWeighing(
	fault: Fault | undefined,
	prior: number,
	items: readonly Item[],
	evidence: Evidence,
	first = -1,
): Weighing {
	const patterns = fault?.patterns ?? [SOUND_PATTERN];
	const runs = runsOf(evidence, fault?.shakenBy ?? "");
	const logs = patternLogs(fault, patterns, runs, items, first);
	const begun = { fault, patterns, runs, logs, prior: Math.log(prior), first };
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

/** Chance of each pattern after what was weighed of the last run. */
export function patternChances({ logs, patterns }: Weighing): Weighed["patterns"] {
	const last = logs.at(-1)!.map((log, p) => Math.log(patterns[p]!.weight) + log);
	const sum = logSum(last);
	// Nothing seen is possible under it: what was seen says nothing of its patterns.
	if (sum === Number.NEGATIVE_INFINITY)
		return patterns.map((pattern) => ({ pattern, chance: pattern.weight }));
	return patterns.map((pattern, p) => ({ pattern, chance: Math.exp(last[p]! - sum) }));
}

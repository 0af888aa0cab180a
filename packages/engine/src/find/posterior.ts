/**
 * Posterior of every fault: prior times likelihood of all that was seen, exact within the listed hypotheses.
 *
 * A steady fault shows one pattern throughout: its likelihood is sum_p w_p prod_items L. A fault that reseating
 * shakes shows a new pattern after each reseating of its connector: the product over runs of such sums.
 */
import type { Fault } from "../faults/index.js";
import type { Item } from "./items.js";
import { PairsMade, pairsWorthWeighing } from "./pairs.js";
import type { Evidence } from "./types.js";
import {
	beginWeighing,
	comesAndGoes,
	itemLog,
	logSum,
	NO_FAULT,
	patternChances,
	total,
	type Weighed,
	type Weighing,
	weighMore,
} from "./weighing.js";

/**
 * Prior of 'no fault of the loom explains this', against the priors of the faults: the person asks because
 * something is wrong. Common practice, no source.
 */
const SOUND = 0.02;
/** A hypothesis must make the telling items at least so many times likelier than a sound car does, or it explains nothing. */
const EXPLAINS = 3;
/** So many of the best are weighed to the end first, to know how good the best is. */
const FIRST = 6;
/** Share of the best hypothesis that all those let go may weigh together, by their upper bounds. */
const LET_GO = 1e-4;

/**
 * Pairs within these odds of the best are weighed by every item; for the others, what tells nothing by itself (a code
 * that is not set, a function that works) counts as spoilt by the pair where either spoils it alone.
 */
const IN_FULL = 0.2;

/** What one question of a search leaves for the next. */
export class SearchMemory {
	readonly pairs = new PairsMade();
	#key: string | undefined;
	#weighed: readonly Weighing[] = [];

	/**
	 * Every fault weighed by the items asked first, most promising first; of the last search.
	 * @param key words that tell the items from all others; undefined: not to be kept
	 */
	first(key: string | undefined, weigh: () => readonly Weighing[]): readonly Weighing[] {
		if (key === undefined) return weigh();
		if (key !== this.#key) {
			this.#weighed = weigh();
			this.#key = key;
		}
		return this.#weighed;
	}
}

export interface PosteriorOptions {
	/** Prior of the sound car, on the scale of the faults' priors. */
	readonly soundPrior?: number;
	/** Weigh two faults at once where one explains little (default). */
	readonly pairs?: boolean;
	/** Kept from one question to the next about the same faults. */
	readonly memory?: SearchMemory;
}

export interface Posterior {
	/** Most probable first; posteriors sum to 1. */
	readonly weighed: readonly Weighed[];
	/** How many pairs of faults were weighed. */
	readonly pairs: number;
}

/**
 * The items that every hypothesis is asked first: those of the condition in which most tells something, and those that
 * need no solve. Codes and functions go before readings, for what faults do to them is found once per car.
 */
function askedFirst(items: readonly Item[]): Item[] {
	const telling = items.filter((item) => item.telling);
	const noted = telling.filter(({ entry }) => entry.kind !== "reading");
	const pool = noted.length > 0 ? noted : telling;
	const count = new Map<string, number>();
	for (const { when } of pool) if (when !== "") count.set(when, (count.get(when) ?? 0) + 1);
	const most = [...count].sort((x, y) => y[1] - x[1])[0]?.[0] ?? "";
	return pool.filter(({ when }) => when === most || when === "");
}

/**
 * Words that tell what was asked first from all else; undefined where that is not to be kept: readings, whose words
 * are rounded, and several occasions, for what comes and goes is judged by all items.
 */
function keyOf(early: readonly Item[], { occasions: [only, ...more] }: Evidence): string | undefined {
	if (more.length > 0 || early.some(({ entry }) => entry.kind === "reading")) return undefined;
	return [...(only?.units ?? []), "", ...early.map(({ text }) => text)].join("|");
}

/**
 * All hypotheses that explain something, most probable first; posteriors sum to 1. The sound car stands for every
 * fault that does not show in what was seen. Log likelihoods of items are at most 0 (densities of readings are taken
 * against the sharpest there is), so what is weighed so far is an upper bound, and hypotheses far below the best are
 * let go by it.
 */
export function posterior(
	faults: readonly Fault[],
	items: readonly Item[],
	evidence: Evidence,
	{ soundPrior = SOUND, pairs: withPairs = true, memory = new SearchMemory() }: PosteriorOptions = {},
): Posterior {
	const early = askedFirst(items);
	const late = items.filter((item) => item.telling && !early.includes(item));
	const rest = items.filter((item) => !item.telling);
	const sound = beginWeighing(undefined, soundPrior, early, evidence);
	const soundBy = evidence.occasions.map(() => 0);
	if (soundBy.length > 1) for (const item of items) soundBy[item.occasion]! += itemLog(NO_FAULT, item);
	const explaining = memory.first(keyOf(early, evidence), () => {
		let patterns = 0;
		return faults
			.map((fault) => {
				const first = patterns;
				patterns += fault.patterns.length;
				return beginWeighing(fault, fault.prior, early, evidence, first, soundBy);
			})
			.sort((x, y) => y.bound - x.bound);
	});
	const telling = early.length + late.length > 0;
	let soundTelling = Number.NEGATIVE_INFINITY;
	const ends = new Map<Weighing, number>();
	/** Weighs a hypothesis to the end; one that explains nothing of what tells stands with the sound car. */
	const finish = (begun: Weighing): number => {
		const w = begun === sound ? sound : { ...begun, logs: begun.logs.map((run) => [...run]) };
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
	/** Weighs hypotheses, most promising first, until those left cannot matter. */
	const finishAll = (sorted: readonly Weighing[], first: number) => {
		for (const w of sorted.slice(0, first)) best = Math.max(best, finish(w));
		const others = sorted.slice(first);
		let gone = 0;
		while (others.length > 0) {
			gone += Math.exp(others.at(-1)!.bound - best);
			if (gone > LET_GO) break;
			others.pop();
		}
		for (const w of others) best = Math.max(best, finish(w));
	};
	finishAll(explaining, FIRST);
	const told = [...early, ...late];
	const leaders = [...ends].sort((x, y) => y[1] - x[1]).map(([w]) => w);
	const alone = new Map<Weighing, number>();
	const toldAlone = (w: Weighing) => {
		let by = alone.get(w);
		if (by === undefined) {
			by = toldBy(w, told, evidence);
			alone.set(w, by);
		}
		return by;
	};
	const pairs: { readonly w: Weighing; readonly end: number }[] = [];
	const worth = withPairs ? pairsWorthWeighing(explaining, early, told, leaders, best, memory.pairs) : [];
	const spoilt = spoiltBy(rest);
	for (const { fault, of } of worth) {
		const w = beginWeighing(fault, fault.prior, early, evidence);
		if (w.bound < best + Math.log(LET_GO)) continue;
		weighMore(w, late);
		const by = total(w) - w.prior;
		// A partner that adds nothing is no explanation, only a second fault that might be there unseen.
		if (by <= Math.max(...of.map(toldAlone), soundTelling) + Math.log(EXPLAINS)) continue;
		pairs.push({ w, end: total(w) + spoilt(of) });
	}
	best = pairs.reduce((most, { end }) => Math.max(most, end), best);
	for (const { w, end } of pairs) {
		if (end < best + Math.log(LET_GO)) continue;
		const full = end >= best + Math.log(IN_FULL);
		if (full) weighMore(w, rest);
		ends.set(w, full ? total(w) : end);
	}
	const all = logSum([...ends.values()]);
	const weighed = [...ends]
		.map(
			([w, end]): Weighed => ({
				fault: w.fault,
				first: w.first,
				posterior: Math.exp(end - all),
				comesAndGoes: comesAndGoes(w),
				patterns: patternChances(w),
			}),
		)
		.sort((x, y) => y.posterior - x.posterior);
	return { weighed, pairs: pairs.length };
}

/** Log likelihood of items if two faults together spoil what either spoils alone; each asked once. */
function spoiltBy(items: readonly Item[]): (of: readonly [Weighing, Weighing]) => number {
	const logs = new Map<Weighing, Float64Array>();
	const logsOf = (w: Weighing) => {
		let own = logs.get(w);
		if (own === undefined) {
			own = Float64Array.from(items, (item) => itemLog(w, item));
			logs.set(w, own);
		}
		return own;
	};
	return ([one, two]) => {
		const [x, y] = [logsOf(one), logsOf(two)];
		let sum = 0;
		for (let k = 0; k < x.length; k++) sum += Math.min(x[k]!, y[k]!);
		return sum;
	};
}

/** Log likelihood of the telling items under a hypothesis. */
function toldBy({ fault, first }: Weighing, items: readonly Item[], evidence: Evidence): number {
	return total(beginWeighing(fault, 1, items, evidence, first));
}

/** How many times as likely each item is under a fault as on a sound car, the fault's own patterns weighted. */
export function timesAsLikely(w: Weighed, items: readonly Item[]): { item: Item; times: number }[] {
	return items.map((item) => {
		return { item, times: Math.exp(itemLog(w, item) - itemLog(NO_FAULT, item)) };
	});
}

/**
 * Two faults at once, where one alone explains little.
 *
 * The prior of a pair is the product of the two, so a pair matters only when every single fault has fallen below it:
 * pairs are listed down to stated odds against the best single, each of two faults that explain something. Each
 * fault enters with its leading patterns; reseating is taken to shake neither.
 */
import type { Change } from "../circuit/index.js";
import type { Fault, Pattern } from "../faults/index.js";
import type { Item } from "./items.js";
import { itemLog, NO_FAULT, type Weighing } from "./weighing.js";

/** Odds against the best hypothesis below which a pair is not weighed. */
const ODDS = 1e-2;
/** A fault is a candidate when it makes some telling item at least so many times likelier than a sound car does. */
const EXPLAINS = 3;
/** Single faults combined, for each telling item: the most probable that explain it. */
const MOST_PER_ITEM = 12;
const MOST_BY_PRIOR = 12;
/** Faults looked through for them, the most probable first: what hands were on, mated contacts, parts, relays. */
const MOST_SEARCHED = 2500;
/** Leading patterns of each fault: all levels of an added resistance. */
const PATTERNS = 3;

/** Pairs kept from one question to the next. */
const MOST_MADE = 20_000;

/** Two faults taken as one hypothesis, and the two alone. */
export interface Pair {
	readonly fault: Fault;
	readonly of: readonly [Weighing, Weighing];
}

/**
 * @param singles weighed by the telling items `early`, most promising first
 * @param told all telling items
 * @param leaders the best hypotheses so far, best first: what they leave unexplained is looked for
 * @param best log of the first's prior times likelihood
 * @param made those of earlier questions of the same search
 */
export function pairsWorthWeighing(
	singles: readonly Weighing[],
	early: readonly Item[],
	told: readonly Item[],
	leaders: readonly Weighing[],
	best: number,
	made: PairsMade,
): Pair[] {
	const byPrior = [...singles].sort((x, y) => y.prior - x.prior);
	const priors = byPrior.map((w) => w.prior);
	const least = best + Math.log(ODDS);
	if (priors.length < 2 || leaders.length === 0 || priors[0]! + priors[1]! < least || early.length === 0)
		return [];
	// The most probable whatever they explain: two may do together what neither does alone (two grounds side by side).
	const likely = new Set<Weighing>(byPrior.slice(0, MOST_BY_PRIOR));
	const leading = leaders.slice(0, MOST_PER_ITEM).map(({ fault }) => fault);
	const candidates = new Set([...likely, ...singles.filter((w) => leading.includes(w.fault))]);
	// The best few for each item: a fault that explains what the leading ones do not must not be crowded out.
	const unexplained = told.filter((item) => !early.includes(item) && !explains(leaders[0]!, item));
	const searched = byPrior.slice(0, MOST_SEARCHED);
	for (const item of [...early, ...unexplained]) {
		let taken = 0;
		for (const w of searched) {
			if (taken >= MOST_PER_ITEM || w.prior + priors[0]! < least) break;
			if (!explains(w, item)) continue;
			candidates.add(w);
			taken++;
		}
	}
	const logs = new Map([...candidates].map((w) => [w, told.map((item) => itemLog(w, item))]));
	const patterns = new Map([...candidates].map((w) => [w, leadingPatterns(w, told)]));
	const pairs: Pair[] = [];
	[...candidates].forEach((one, k, all) => {
		for (const two of all.slice(k + 1)) {
			const prior = one.prior + two.prior;
			if (prior < least) continue;
			const together = likely.has(one) && likely.has(two);
			if (together || prior + eachExplains(logs.get(one)!, logs.get(two)!) >= least)
				pairs.push({
					fault: made.of(one.fault!, two.fault!, patterns.get(one)!, patterns.get(two)!),
					of: [one, two],
				});
		}
	});
	return pairs;
}

/** Pairs are the very same objects from one question to the next: what is known of their changes is found again. */
export class PairsMade {
	readonly #made = new Map<string, { pair: Fault; of: readonly Pattern[] }>();

	of(f: Fault, g: Fault, ofF: readonly Pattern[], ofG: readonly Pattern[]): Fault {
		const key = `${f.id} & ${g.id}`;
		const of = [...ofF, ...ofG];
		const known = this.#made.get(key);
		if (known?.of.length === of.length && known.of.every((pattern, k) => pattern === of[k]))
			return known.pair;
		if (this.#made.size >= MOST_MADE) this.#made.clear();
		const pair = pairOf(f, g, ofF, ofG);
		this.#made.set(key, { pair, of });
		return pair;
	}
}

/** It makes the item clearly likelier than a sound car does. */
function explains(w: Weighing, item: Item): boolean {
	return itemLog(w, item) > itemLog(NO_FAULT, item) + Math.log(EXPLAINS);
}

/** Log likelihood where each of two explains what it can; none where the second explains nothing that the first does not. */
function eachExplains(one: readonly number[], two: readonly number[]): number {
	let both = 0;
	let first = 0;
	let second = 0;
	for (let k = 0; k < one.length; k++) {
		first += one[k]!;
		second += two[k]!;
		both += Math.max(one[k]!, two[k]!);
	}
	return both > Math.max(first, second) + Math.log(EXPLAINS) ? both : Number.NEGATIVE_INFINITY;
}

function pairOf(f: Fault, g: Fault, ofF: readonly Pattern[], ofG: readonly Pattern[]): Fault {
	const patterns: Pattern[] = [];
	for (const x of ofF)
		for (const y of ofG) patterns.push({ weight: x.weight * y.weight, change: both(x.change, y.change) });
	return {
		id: `${f.id} & ${g.id}`,
		kind: "two faults",
		where: `${f.kind}: ${f.where}; and ${g.kind}: ${g.where}`,
		place: f.place === g.place ? f.place : `${f.place}; ${g.place}`,
		prior: f.prior * g.prior,
		patterns,
		shakenBy: "",
		inParts: [...f.inParts, ...g.inParts],
		path: [...f.path, ...g.path],
		mend: `${f.mend}; and ${g.mend}`,
	};
}

/**
 * The patterns that explain best some one of the telling items, with the weights they have: what is left out counts
 * as explaining nothing.
 */
function leadingPatterns({ fault, first }: Weighing, told: readonly Item[]): readonly Pattern[] {
	const { patterns } = fault!;
	if (patterns.length <= PATTERNS) return patterns;
	const logs = patterns.map((pattern, p) =>
		told.map((item) => item.log(fault, pattern, first < 0 ? first : first + p)),
	);
	const most = told.map((_, k) => Math.max(...logs.map((row) => row[k]!)));
	/** Items that a pattern explains as well as the best does; a tie goes to the more likely. */
	const score = logs.map((row, p) => row.filter((log, k) => log > most[k]! - 1).length + patterns[p]!.weight);
	return patterns
		.map((pattern, p) => ({ pattern, score: score[p]! }))
		.sort((x, y) => y.score - x.score)
		.slice(0, PATTERNS)
		.map(({ pattern }) => pattern);
}

/** Both changes at once; where they concern the same branch an opening has the last word. */
function both(x: Change, y: Change): Change {
	const branches = new Map(x.branches.map((b) => [b.branch, b]));
	for (const b of y.branches) {
		const there = branches.get(b.branch);
		const opened = there !== undefined && "siemens" in there && there.siemens === 0;
		if (!opened) branches.set(b.branch, b);
	}
	return { branches: [...branches.values()], added: [...x.added, ...y.added] };
}

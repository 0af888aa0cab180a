/** From evidence to ranked faults and the next reading. */
import { nodesNeeded, settingsOf } from "../circuit/index.js";
import {
	type Fault,
	type FaultyCar,
	faultsOf,
	NO_RECORD,
	ratesFrom,
	type ShopRates,
	type ShopRecord,
	stepsOf,
	withRates,
} from "../faults/index.js";
import type { Loom } from "../loom/index.js";
import type { Question } from "../readings/index.js";
import type { Touched } from "../recipe/index.js";
import { rateActions } from "./actions.js";
import { mayBeTaken } from "./battery.js";
import { candidates } from "./candidates.js";
import { type Effects, effectsKey, gather } from "./effects/index.js";
import { contradictions, explain } from "./explain.js";
import { type Item, itemsOf, Watch } from "./items.js";
import { rateSteps } from "./next-step.js";
import { posterior, SearchMemory, timesAsLikely } from "./posterior.js";
import { keyOf } from "./reader.js";
import { repeatStep } from "./repeat-step.js";
import type {
	Contradiction,
	Evidence,
	Explanation,
	Found,
	GroundLine,
	NextStep,
	RankedFault,
	SingleFault,
} from "./types.js";
import type { Weighed } from "./weighing.js";

/** Faults shown, at most. */
const MOST_SHOWN = 30;
/** Posterior from which on a fault's grounds are told with it; those of others when asked about (`explain`). */
const TOLD = 1e-2;
/** Of these, the leading ones are compared with each other for being alike. */
const MOST_COMPARED = 8;
/** Hypotheses that a next reading is to tell apart: this share of all belief, and at most so many. */
const BELIEF = 0.995;
const MOST_LEADING = 60;
/** Share of belief in one group of faults that nothing offered tells apart, from which it may be looked at and mended. */
const SETTLED = 0.95;

/** A search whose readings tell less than this, in bits, is settled, though they are still offered. */
const WORTH_IT = 0.05;

/** Between the ids of the two faults of a pair (pairs.ts). */
const BOTH = " & ";

/** A car made ready for finding: its faults listed, what each does to codes and functions remembered. */
export class Finder {
	readonly watch: Watch;
	readonly #listed: readonly Fault[];
	readonly #touched: Touched;
	#faults: readonly Fault[];
	#rates: ShopRates;
	#memory = new SearchMemory();
	#counted = "";

	/** @param plugsOff the evidence has plugs pulled: what touches a wire must stay with the wire */
	constructor(car: FaultyCar, of: Evidence["of"], plugsOff = false) {
		const { circuit, faults, touched } = faultsOf(car, of, plugsOff);
		this.#listed = faults;
		this.#touched = touched;
		this.#faults = faults;
		this.#rates = ratesFrom(faults, touched, NO_RECORD);
		const changes = faults.flatMap((fault) => fault.patterns.map((pattern) => pattern.change));
		const needed = new Set(changes.flatMap((change) => nodesNeeded(circuit, change)));
		this.watch = new Watch(circuit, needed, changes.length);
	}

	get faults(): readonly Fault[] {
		return this.#faults;
	}

	/** What the shop's own repairs make of the chances, with their counts. */
	get rates(): ShopRates {
		return this.#rates;
	}

	/**
	 * Counts the shop's own repairs into the chances of the faults, in place of those counted before.
	 * @param doneBy who did each step of the recipe, by its name
	 */
	count(record: ShopRecord, doneBy: ReadonlyMap<string, string>): void {
		const counted = JSON.stringify([record, [...doneBy]]);
		if (counted === this.#counted) return;
		this.#counted = counted;
		this.#rates = ratesFrom(this.#listed, this.#touched, record);
		this.#faults = withRates(this.#listed, this.#touched, this.#rates, doneBy);
		this.#memory = new SearchMemory();
	}

	/** Key under which what this car's faults do may be kept: the same for the same tables. */
	get key(): string {
		return effectsKey(this.watch.circuit.loom, this.faults);
	}

	/** What every fault does to codes and functions: seconds of work, to be kept. */
	effects(): Effects {
		const { watch } = this;
		const sound = { weight: 1, change: { branches: [], added: [] } };
		return gather(this.key, watch.rows, this.faults, (row, pattern) => watch.chance(row, pattern ?? sound));
	}

	/** Uses kept effects from here on. Says false, and does not, where they are of another car. */
	use(effects: Effects): boolean {
		const patterns = this.faults.reduce((sum, fault) => sum + fault.patterns.length, 0);
		const fits =
			effects.first.length === patterns + 1 &&
			effects.rows.join() === this.watch.rows.join() &&
			effects.key === this.key;
		if (fits) this.watch.use(effects);
		return fits;
	}

	/**
	 * Ranks every fault under the evidence and proposes the next reading.
	 * @param refused readings that the technician will not take: others are proposed
	 */
	find(evidence: Evidence, refused: readonly Question[] = []): Found {
		const { items, unknown, weighed, pairs, leading, steps, groups } = this.#weigh(evidence, refused);
		const groupOf = new Map(leading.map((w, k) => [w, groups[k]!]));
		const faults = weighed
			.filter((w) => w.fault !== undefined)
			.slice(0, MOST_SHOWN)
			.map(
				(w): RankedFault => ({
					...ranked(w, groupOf, items, this.watch),
					singles: this.#singlesOf(w.fault!),
				}),
			);
		const shares = sharesOf(leading, groups);
		const repeat = contradictions(
			weighed[0]!,
			items,
			weighed[0]!.fault ? "the leading fault" : "a sound loom, which is likeliest",
		);
		const again = this.#again(evidence, weighed, repeat);
		return {
			faults,
			sound: weighed.find((w) => w.fault === undefined)!.posterior,
			settled: again === undefined && (shares[0]! > SETTLED || steps.every(({ bits }) => bits < WORTH_IT)),
			bits: -shares.reduce((sum, p) => sum + p * Math.log2(p), 0),
			next: again ?? steps[0],
			others: again ? steps : steps.slice(1),
			actions: rateActions(this.watch.circuit.loom, leading),
			contradictions: [...unknown, ...repeat.map(({ text }) => text)],
			repeat,
			considered: {
				singles: this.faults.filter((f) => f.patterns.length === 1).length,
				common: this.faults.filter((f) => f.patterns.length > 1).length,
				pairs,
			},
		};
	}

	/**
	 * Why a fault is suspected and what would settle it. Any listed fault may be asked about, and any pair that `find`
	 * ranks under the evidence.
	 * @throws RangeError where there is no such fault
	 */
	explain(evidence: Evidence, id: string): Explanation {
		const { items, weighed, leading, steps } = this.#weigh(evidence);
		const asked = weighed.find(({ fault }) => fault?.id === id) ?? this.#unweighed(id);
		const next = steps.map(({ question }) => question);
		return explain(this.watch, asked, leading, items, evidence, next);
	}

	/** Where the sound loom is likeliest, though a reading does not fit it: that reading once more. */
	#again(
		evidence: Evidence,
		weighed: readonly Weighed[],
		repeat: readonly Contradiction[],
	): NextStep | undefined {
		if (weighed[0]!.fault !== undefined) return undefined;
		const all = evidence.occasions.flatMap(({ readings }) => readings);
		const wrong = repeat.flatMap(({ entry }) => (entry.kind === "reading" ? [keyOf(entry.question)] : []));
		const times = (keys: readonly string[], key: string) => keys.filter((one) => one === key).length;
		// Where it was right another time it has been taken once more already.
		const key = wrong.find((one) => times(all.map(keyOf), one) === times(wrong, one));
		const reading = all.findLast((one) => keyOf(one) === key);
		return reading && repeatStep(this.watch.circuit, reading, weighed, all.at(-1));
	}

	/** The faults that a ranked one is made of: itself, or the two of a pair. */
	#singlesOf(fault: Fault): SingleFault[] {
		const own = fault.id.split(BOTH).flatMap((id) => this.#faults.find((one) => one.id === id) ?? []);
		return own.map((one) => ({
			...{ id: one.id, kind: one.kind, where: one.where, steps: stepsOf(one, this.#touched) },
		}));
	}

	/** A fault that the evidence left far behind. */
	#unweighed(id: string): Weighed {
		const fault = this.faults.find((one) => one.id === id);
		if (fault === undefined)
			throw new RangeError(`no fault '${id}' on this car; wanted: an id that find gives`);
		const patterns = fault.patterns.map((pattern) => ({ pattern, chance: pattern.weight }));
		return { fault, posterior: 0, first: -1, comesAndGoes: 0, patterns };
	}

	#weigh(evidence: Evidence, refused: readonly Question[] = []) {
		const { items, unknown } = itemsOf(this.watch, evidence);
		const { weighed, pairs } = posterior(this.faults, items, evidence, { memory: this.#memory });
		const leading = leadingOf(weighed);
		const { circuit, reader } = this.watch;
		const questions = candidates(circuit, leading, evidence, refused).filter((question) =>
			mayBeTaken(evidence, question),
		);
		const last = evidence.occasions.flatMap((o) => o.readings).at(-1);
		const { steps, groups } = rateSteps(circuit, reader, questions, leading, last);
		return { items, unknown, weighed, pairs, leading, steps, groups };
	}
}

function leadingOf(weighed: readonly Weighed[]): Weighed[] {
	const leading: Weighed[] = [];
	let sum = 0;
	for (const w of weighed) {
		if (sum > BELIEF || leading.length >= MOST_LEADING) break;
		leading.push(w);
		sum += w.posterior;
	}
	return leading;
}

/** Share of belief in each group, the first's first. */
function sharesOf(leading: readonly Weighed[], groups: readonly number[]): number[] {
	const shares: number[] = [];
	const sum = leading.reduce((all, w) => all + w.posterior, 0);
	groups.forEach((group, k) => {
		shares[group] = (shares[group] ?? 0) + leading[k]!.posterior / sum;
	});
	return shares;
}

function ranked(
	w: Weighed,
	groupOf: ReadonlyMap<Weighed, number>,
	items: readonly Item[],
	watch: Watch,
): Omit<RankedFault, "singles"> {
	const fault = w.fault!;
	const grounds = (w.posterior < TOLD ? [] : timesAsLikely(w, items))
		.filter(({ times }) => times > 1.05 || times < 0.95)
		.sort((x, y) => Math.abs(Math.log(y.times)) - Math.abs(Math.log(x.times)))
		.slice(0, 8)
		.map(({ item, times }): GroundLine => ({ text: item.text, times }));
	return {
		id: fault.id,
		kind: fault.kind,
		where: fault.where,
		place: fault.place,
		posterior: w.posterior,
		comesAndGoes: w.comesAndGoes,
		grounds,
		alike: alike(w, groupOf, watch),
		path: fault.path,
		mend: fault.mend,
	};
}

/** Faults whose every monitor and function number is the same, and what the readings offered would show. */
function alike(w: Weighed, groupOf: ReadonlyMap<Weighed, number>, watch: Watch): string[] {
	const [only, ...more] = w.fault!.patterns;
	const all = [...groupOf.keys()].slice(0, MOST_COMPARED);
	if (more.length > 0 || !all.includes(w)) return [];
	const { predictions } = watch;
	return all
		.filter((other) => groupOf.get(other) === groupOf.get(w))
		.filter(({ fault }) => fault && fault !== w.fault && fault.patterns.length === 1)
		.filter(({ fault }) => {
			const theirs = fault!.patterns[0]!.change;
			return predictions.things.every((_thing, k) => {
				const x = predictions.number(k, only!.change);
				const y = predictions.number(k, theirs);
				if (Number.isNaN(x) || Number.isNaN(y)) return Number.isNaN(x) === Number.isNaN(y);
				const apart = Math.abs(x - y);
				return apart <= 1e-3 || apart <= 0.5 * predictions.deviation(k);
			});
		})
		.map(({ fault }) => fault!.id);
}

const finders = new WeakMap<FaultyCar, Map<string, Finder>>();

/** The finder of a car; made at the first call, reused by later ones. */
export function finderOf(car: FaultyCar, evidence: Evidence): Finder {
	const off = plugsOff(evidence.of === "delivered" ? car.delivered : car.converted, evidence);
	const key = `${evidence.of}|${off}`;
	let known = finders.get(car);
	if (known === undefined) {
		known = new Map();
		finders.set(car, known);
	}
	let finder = known.get(key);
	if (finder === undefined) {
		finder = new Finder(car, evidence.of, off);
		known.set(key, finder);
	}
	return finder;
}

/** Some reading was taken with a plug off. */
function plugsOff(loom: Loom, { occasions }: Evidence): boolean {
	const conditions = new Set(occasions.flatMap(({ readings }) => readings.map(({ when }) => when)));
	return [...conditions].some((when) => {
		try {
			return [...settingsOf(loom, when).values()].includes("unmated");
		} catch (error) {
			// A condition that this car does not have is named in the answer.
			if (error instanceof RangeError) return false;
			throw error;
		}
	});
}

/** Ranks the faults of a car under the evidence. The first call lists and predicts them all; later ones reuse that. `refused`: as of `Finder.find`. */
export function findFaults(car: FaultyCar, evidence: Evidence, refused: readonly Question[] = []): Found {
	return finderOf(car, evidence).find(evidence, refused);
}

/**
 * Why a fault is suspected under the evidence, what it predicts of each reading, what would refute it.
 * @throws RangeError where there is no such fault
 */
export function explainFault(car: FaultyCar, evidence: Evidence, id: string): Explanation {
	return finderOf(car, evidence).explain(evidence, id);
}

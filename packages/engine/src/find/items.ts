/** Evidence split into single items, each with its likelihood under a pattern of a fault. */
import type { Change, Circuit } from "../circuit/index.js";
import type { Fault, Pattern } from "../faults/index.js";
import type { Loom, Monitor } from "../loom/index.js";
import { conditionWords, forbidden, pointOf, type Question, ReadingError } from "../readings/index.js";
import { chanceOf, type Effects } from "./effects/index.js";
import {
	BENCH_FALSE,
	chanceOutside,
	logBench,
	logCode,
	logFunction,
	logReading,
	MISJUDGED,
	MISSED_CODE,
	STRAY_CODE,
	strayReading,
} from "./likelihood.js";
import { Predictions } from "./predictions.js";
import { monitorSeen, needSeen, type Seen } from "./quantities.js";
import { keyOf, Reader } from "./reader.js";
import type { Entry, Evidence } from "./types.js";
import { SOUND_PATTERN } from "./weighing.js";

/** One thing that was seen. */
export interface Item {
	readonly text: string;
	readonly occasion: number;
	readonly entry: Entry;
	/** Says something about the fault: a code that is set, a function that fails, a reading that is not as on a sound car. */
	readonly telling: boolean;
	/** The condition it is seen in: items of one condition cost one solve together. Empty: no solve needed. */
	readonly when: string;
	/** Likelihood of it if it has nothing to do with the car: a stray code, a misread value. */
	readonly stray: number;
	/**
	 * Log likelihood under one pattern of a fault.
	 * @param at number of the pattern among all patterns of the car, to remember it by; -1: none
	 */
	log(fault: Fault | undefined, pattern: Pattern, at: number): number;
}

/** All items of the evidence, and what it says that this car's tables do not know. */
export interface Items {
	readonly items: readonly Item[];
	readonly unknown: readonly string[];
}

/** Monitors and functions of a car, predicted under every fault; evidence comes and goes, these stay. */
export class Watch {
	readonly monitors: readonly { readonly monitor: Monitor; readonly thing: number }[];
	readonly needs: ReadonlyMap<
		string,
		readonly { readonly thing: number; readonly low?: number; readonly high?: number }[]
	>;
	readonly predictions: Predictions;

	readonly reader: Reader;
	/** Log likelihoods by the words of an item: one per numbered pattern, NaN if not asked yet, and of all others. */
	readonly #known = new Map<string, { logs: Float64Array; others: WeakMap<Pattern, number> }>();

	/**
	 * @param needed nodes that the faults' changes need
	 * @param patterns how many patterns the faults of the car have together
	 */
	constructor(
		readonly circuit: Circuit,
		needed: ReadonlySet<number>,
		readonly patterns = 0,
	) {
		this.reader = new Reader(circuit, needed);
		this.#alikeOf = new Int32Array(patterns).fill(-1);
		const { loom } = circuit;
		const things: Seen[] = [];
		const monitors: { monitor: Monitor; thing: number }[] = [];
		for (const monitor of loom.monitors) {
			const seen = monitorSeen(circuit, monitor);
			if (seen) monitors.push({ monitor, thing: things.push(seen) - 1 });
		}
		const needs = new Map<string, { thing: number; low?: number; high?: number }[]>();
		for (const need of loom.functions) {
			const seen = needSeen(circuit, need);
			if (!seen) continue;
			const row = {
				thing: things.push(seen) - 1,
				...(need.low === undefined ? {} : { low: need.low }),
				...(need.high === undefined ? {} : { high: need.high }),
			};
			const list = needs.get(need.function);
			if (list) list.push(row);
			else needs.set(need.function, [row]);
		}
		this.monitors = monitors;
		this.needs = needs;
		this.predictions = new Predictions(circuit, things, needed);
		const { automata } = circuit.standing([...loom.conditions.keys()][0]!);
		automata.forEach(({ spec }, at) => {
			if (spec.element === "power") this.#power.set(spec.part, { at, powered: spec.states.length - 1 });
		});
	}

	#effects: Effects | undefined;

	/** What `effects` tells of: each monitor by its number, each function, each unit that has monitors. */
	get rows(): readonly string[] {
		this.#rows ??= this.#listed();
		return this.#rows;
	}

	#rows: readonly string[] | undefined;

	#listed(): string[] {
		const units = new Set(this.monitors.map(({ monitor }) => monitor.unit));
		return [
			...this.monitors.map(({ monitor }, at) => `monitor ${at}: ${monitor.code}`),
			...[...this.needs.keys()].map((name) => `function ${name}`),
			...[...units].map((unit) => `unit ${unit}`),
		];
	}

	/** Rows of functions and of units, by name. */
	#rowOf: ReadonlyMap<string, number> = new Map();
	#unitRow: ReadonlyMap<string, number> = new Map();

	/** Takes what was found of every numbered pattern from here on. */
	use(effects: Effects): void {
		const named = (word: string) =>
			new Map(
				effects.rows.flatMap((row, k) =>
					row.startsWith(word) ? [[row.slice(word.length), k] as const] : [],
				),
			);
		this.#rowOf = named("function ");
		this.#unitRow = named("unit ");
		this.#effects = effects;
	}

	#kept(row: number | undefined, numbered: number): number | undefined {
		const effects = this.#effects;
		if (effects === undefined || numbered < 0 || row === undefined) return undefined;
		return chanceOf(effects, numbered, row);
	}

	/** Chance of one of `rows` under a pattern. */
	chance(row: number, pattern: Pattern): number {
		if (row < this.monitors.length) return this.trips(row, pattern, -1);
		const name = this.rows[row]!;
		if (name.startsWith("function ")) return this.holds(name.slice("function ".length), pattern, -1);
		return this.answers(name.slice("unit ".length), pattern, -1) ? 1 : 0;
	}

	/**
	 * A log likelihood that is found once for each pattern.
	 * @param text words that tell the item from others
	 * @param alike it is the same for all patterns that the predictions cannot tell apart
	 */
	remembered(text: string, log: (pattern: Pattern, at: number) => number, alike = false): Item["log"] {
		let known = this.#known.get(text);
		if (known === undefined) {
			if (this.#known.size >= MOST_REMEMBERED) this.#known.clear();
			known = { logs: new Float64Array(this.patterns).fill(Number.NaN), others: new WeakMap() };
			this.#known.set(text, known);
		}
		const { logs, others } = known;
		const unnumbered = (pattern: Pattern) => {
			let one = others.get(pattern);
			if (one === undefined) {
				one = log(pattern, -1);
				others.set(pattern, one);
			}
			return one;
		};
		return (_fault, pattern, at) => {
			if (at < 0) return unnumbered(pattern);
			// What is kept is there without a look at the change.
			const place = alike && this.#effects === undefined ? this.#firstAlike(pattern, at) : at;
			let one = logs[place]!;
			if (Number.isNaN(one)) {
				one = log(pattern, at);
				logs[place] = one;
			}
			return one;
		};
	}

	/** The first numbered pattern asked about that the predictions cannot tell from this one. */
	#firstAlike(pattern: Pattern, at: number): number {
		let first = this.#alikeOf[at]!;
		if (first < 0) {
			const stands = this.predictions.sound.stands(pattern.change);
			first = this.#firstOf.get(stands) ?? at;
			if (first === at) this.#firstOf.set(stands, at);
			this.#alikeOf[at] = first;
		}
		return first;
	}

	/** By numbered pattern; -1: not asked yet. */
	readonly #alikeOf: Int32Array;
	readonly #firstOf = new Map<Change, number>();

	/** Automaton of each unit's power, and its state when powered. */
	readonly #power = new Map<string, { readonly at: number; readonly powered: number }>();

	#runs(unit: string, thing: number, pattern: Pattern): boolean {
		const power = this.#power.get(unit);
		return power === undefined || this.predictions.state(thing, power.at, pattern.change) === power.powered;
	}

	/**
	 * Chance that a monitor's code is set under a pattern; 0 where its unit does not run.
	 * @param numbered number of the pattern; -1: none
	 */
	trips(at: number, pattern: Pattern, numbered: number): number {
		const kept = this.#kept(at, numbered);
		if (kept !== undefined) return kept;
		const { monitor, thing } = this.monitors[at]!;
		if (!this.#runs(monitor.unit, thing, pattern)) return 0;
		const value = this.predictions.number(thing, pattern.change);
		if (Number.isNaN(value)) return 0.5;
		return chanceOutside(value, this.predictions.deviation(thing), monitor.below, monitor.above);
	}

	/** Whether a unit answers a read-out. */
	answers(unit: string, pattern: Pattern, numbered: number): boolean {
		const kept = this.#kept(this.#unitRow.get(unit), numbered);
		if (kept !== undefined) return kept > 0.5;
		const at = this.monitors.findIndex(({ monitor }) => monitor.unit === unit);
		return at < 0 || this.#runs(unit, this.monitors[at]!.thing, pattern);
	}

	/** Chance that a function holds: that of its weakest need. */
	holds(name: string, pattern: Pattern, numbered: number): number {
		const kept = this.#kept(this.#rowOf.get(name), numbered);
		if (kept !== undefined) return kept;
		let chance = 1;
		for (const { thing, low, high } of this.needs.get(name) ?? []) {
			const value = this.predictions.number(thing, pattern.change);
			const out = Number.isNaN(value)
				? 1
				: chanceOutside(value, this.predictions.deviation(thing), low, high);
			chance = Math.min(chance, 1 - out);
		}
		return chance;
	}
}

/** Items whose likelihoods are remembered: codes and functions both ways, and the readings of a long search. */
const MOST_REMEMBERED = 600;

/** A reading no likelier on a sound car than this many times a stray one is odd. */
const ODD = 5;

/** Chance that a unit without power is nevertheless said to have answered. */
const DEAD_UNIT_ANSWERS = 0.02;

export function itemsOf(watch: Watch, evidence: Evidence): Items {
	const items: Item[] = [];
	const unknown: string[] = [];
	const codes = new Map<string, number[]>();
	watch.monitors.forEach(({ monitor }, at) => {
		const list = codes.get(monitor.code);
		if (list) list.push(at);
		else codes.set(monitor.code, [at]);
	});
	evidence.occasions.forEach((occasion, number) => {
		if (occasion.codes) {
			const present = new Set(occasion.codes);
			for (const code of present)
				if (!codes.has(code))
					unknown.push(`code ${code} is not in this car's monitors.csv: it says nothing here`);
			const units = new Set(occasion.units);
			const asked = (unit: string) => units.size === 0 || units.has(unit);
			const answered = new Set(
				[...codes]
					.filter(([code]) => present.has(code))
					.flatMap(([, at]) => at.map((k) => watch.monitors[k]!.monitor.unit)),
			);
			for (const unit of units.size > 0 ? units : answered) {
				const text = `${unit} answered the read-out`;
				items.push({
					text,
					occasion: number,
					entry: { kind: "unit", unit },
					telling: false,
					stray: DEAD_UNIT_ANSWERS,
					when: watch.monitors.find(({ monitor }) => monitor.unit === unit)?.monitor.when ?? "",
					log: watch.remembered(
						text,
						(pattern, at) => (watch.answers(unit, pattern, at) ? 0 : Math.log(DEAD_UNIT_ANSWERS)),
						true,
					),
				});
			}
			for (const [code, at] of codes) {
				const own = at.filter((k) => asked(watch.monitors[k]!.monitor.unit));
				if (own.length === 0) continue;
				const seen = present.has(code);
				const text = seen ? `code ${code} is set` : `code ${code} is not set`;
				items.push({
					text,
					occasion: number,
					entry: { kind: "code", code },
					telling: seen,
					when: watch.monitors[own[0]!]!.monitor.when,
					stray: seen ? STRAY_CODE : MISSED_CODE,
					log: watch.remembered(
						`${text} in ${own.join()}`,
						(pattern, numbered) => {
							let trips = 0;
							for (const k of own) trips = Math.max(trips, watch.trips(k, pattern, numbered));
							return logCode(seen, trips);
						},
						true,
					),
				});
			}
		}
		for (const [name, held] of Object.entries(occasion.functions)) {
			if (!watch.needs.has(name)) {
				unknown.push(
					`function '${name}' is not in this car's functions.csv; known: ${[...watch.needs.keys()].join(", ")}`,
				);
				continue;
			}
			const text = held ? `'${name}' works` : `'${name}' does not work`;
			items.push({
				text,
				occasion: number,
				entry: { kind: "function", function: name },
				telling: !held,
				stray: MISJUDGED,
				when: watch.circuit.loom.functions.find((f) => f.function === name)!.when,
				log: watch.remembered(text, (pattern, at) => logFunction(held, watch.holds(name, pattern, at)), true),
			});
		}
		for (const [part, good] of Object.entries(occasion.bench)) {
			if (!watch.circuit.loom.parts.has(part))
				unknown.push(`bench test of '${part}': no such part in this car`);
			items.push({
				text: good ? `${part} tested good by itself` : `${part} tested bad by itself`,
				occasion: number,
				entry: { kind: "bench", part },
				telling: true,
				when: "",
				stray: BENCH_FALSE,
				log: (fault) => logBench(good, fault?.inParts.includes(part) === true),
			});
		}
		if (occasion.reseated !== "" && !watch.circuit.loom.parts.has(occasion.reseated))
			unknown.push(`reseated '${occasion.reseated}': no such connector or part in this car`);
		items.push(...readingItems(watch, evidence, number, unknown));
	});
	return { items, unknown };
}

function readingItems(watch: Watch, evidence: Evidence, number: number, unknown: string[]): Item[] {
	const { readings } = evidence.occasions[number]!;
	const { circuit } = watch;
	const refused = new Map(readings.map((reading) => [reading, unaskable(circuit, reading)]));
	watch.reader.prepare(readings.filter((reading) => refused.get(reading) === undefined));
	return readings.flatMap((reading): Item[] => {
		const { what, value, when } = reading;
		const why = refused.get(reading);
		const read = why ? undefined : watch.reader.of(reading);
		const text = readingText(circuit.loom, reading, value);
		if (read === undefined) {
			unknown.push(why ?? `${text}: nothing joins the two contacts directly, so it cannot be compared`);
			return [];
		}
		const log = (pattern: Pattern) => logReading(what, value, read.number(pattern.change), read.deviation());
		const stray = strayReading(value);
		return [
			{
				text,
				occasion: number,
				entry: { kind: "reading", question: { what, from: reading.from, to: reading.to, when } },
				// What a sound car shows as well says nothing of which fault is there, only of which is not.
				telling: Math.exp(log(SOUND_PATTERN)) < stray * ODD,
				when,
				stray,
				log: watch.remembered(`${keyOf(reading)}|${value}`, log),
			},
		];
	});
}

/** Why a reading can have no place in the reckoning: a restraint circuit, or names that this car does not have. */
export function unaskable(circuit: Circuit, { from, to, when }: Question): string | undefined {
	for (const name of [from, to]) {
		const why = forbidden(circuit.loom, name.replace(/!pin$/, ""));
		if (why) return why;
	}
	try {
		for (const name of [from, to]) pointOf(circuit, name);
		circuit.standing(when);
	} catch (error) {
		if (error instanceof ReadingError || error instanceof RangeError) return error.message;
		throw error;
	}
	return undefined;
}

const UNIT = { volts: "V", drop: "V", ohms: "ohm", amps: "A" } as const;

function readingText(loom: Loom, question: Question, value: number | "open"): string {
	return `${questionText(loom, question)}: ${valueText(question.what, value)}`;
}

/** `open`, or three digits with the unit. */
export function valueText(what: Question["what"], value: number | "open"): string {
	return value === "open" ? "open" : `${Number(value.toPrecision(3))} ${UNIT[what]}`;
}

/** `ohms A.1 to B.2 in key-on`; a condition said in place in words. */
export function questionText(loom: Loom, { what, from, to, when }: Question): string {
	return `${what} ${from} to ${to} in ${loom.conditions.has(when) ? when : conditionWords(loom, when)}`;
}

/** Predicted numbers under any change, by one batch per condition, found when asked for and remembered. */
import {
	Batch,
	type Change,
	type Circuit,
	CircuitError,
	type Probe,
	TRUSTED_PIVOT,
} from "../circuit/index.js";
import { type Seen, SoundCar } from "./quantities.js";

/** What one condition shows under a change. */
interface Shown {
	/** One number per thing seen in that condition; NaN is 'open' (no way between the points) or not settled. */
	readonly numbers: Float64Array;
	readonly states: Uint8Array;
	/** Its automata stand as in the sound car; undefined until asked. */
	asSound?: boolean;
}

interface Group {
	readonly seen: { readonly when: string; readonly dead: boolean };
	readonly probes: Probe[];
	/** Which probe of the batch stands for a term of a thing (numbered within the group). */
	readonly use: { readonly thing: number; readonly probe: number; readonly factor: number }[];
	size: number;
	batch: Batch | undefined;
}

/** A change in the condensed network's numbers, and what was found under it, by condition. */
interface Known {
	readonly change: Change;
	/** For ohms added in one run: that run opened. */
	readonly opened: Known | undefined;
	readonly shown: (Shown | undefined)[];
}

/** Equal to a share of the number that no meter and no control unit sees. */
function near(x: number, y: number): boolean {
	return x === y || Math.abs(x - y) <= 1e-5 * (1 + Math.abs(x)) || (Number.isNaN(x) && Number.isNaN(y));
}

const SOUND: Change = { branches: [], added: [] };

export class Predictions {
	readonly #groups: Group[] = [];
	/** Group and place in it of each thing. */
	readonly #placeOf: { readonly group: number; readonly at: number }[] = [];
	/** What was found under a change in the condensed network's numbers, shared by all that come to it; by condition. */
	readonly #stands = new Map<Change, Known>();
	readonly #soundKnown: Known;

	readonly sound: SoundCar;
	readonly #deviations: (number | undefined)[] = [];

	/**
	 * @param needed nodes that the changes asked about need (`nodesNeeded`)
	 * @param sound a sound car to share, in which all points looked at and needed are kept
	 */
	constructor(
		circuit: Circuit,
		readonly things: readonly Seen[],
		needed: ReadonlySet<number>,
		sound?: SoundCar,
	) {
		const probes = things.flatMap(({ terms }) => terms.map(({ probe }) => probe));
		this.sound = sound ?? new SoundCar(circuit, probes, needed);
		this.#soundKnown = this.#knownOf(this.sound.stands(SOUND));
		const byKey = new Map<string, number>();
		for (const seen of things) {
			const key = `${seen.dead}|${seen.when}`;
			let group = byKey.get(key);
			if (group === undefined) {
				group = this.#groups.push({ seen, probes: [], use: [], size: 0, batch: undefined }) - 1;
				byKey.set(key, group);
			}
			const into = this.#groups[group]!;
			const thing = into.size++;
			this.#placeOf.push({ group, at: thing });
			for (const { probe, factor } of seen.terms)
				into.use.push({ thing, probe: into.probes.push(this.sound.net.probe(probe)) - 1, factor });
		}
	}

	/** Number of the condition a thing is seen in; things of one condition are found together. */
	conditionOf(thing: number): number {
		return this.#placeOf[thing]!.group;
	}

	/** A thing's number under a change; NaN is 'open'. */
	number(thing: number, change: Change): number {
		const { group, at } = this.#placeOf[thing]!;
		const known = this.#knownFor(change);
		const sound = known.shown[group] === undefined ? this.#unshaken(group, known) : undefined;
		if (sound !== undefined && near(sound.numbers[at]!, this.#shownBy(group, known.opened!).numbers[at]!))
			return sound.numbers[at]!;
		return this.#shownBy(group, known).numbers[at]!;
	}

	/** Standard deviation of a thing's number on a sound car, in its unit. */
	deviation(thing: number): number {
		this.#deviations[thing] ??= this.sound.deviation(this.things[thing]!);
		return this.#deviations[thing];
	}

	/** State of an automaton in the condition that a thing is seen in. */
	state(thing: number, automaton: number, change: Change): number {
		const { group } = this.#placeOf[thing]!;
		const known = this.#knownFor(change);
		const sound = known.shown[group] === undefined ? this.#unshaken(group, known) : undefined;
		return (sound ?? this.#shownBy(group, known)).states[automaton]!;
	}

	#knownFor(change: Change): Known {
		return this.#knownOf(this.sound.stands(change));
	}

	/** What is known of a change that is said in the condensed network's own numbers. */
	#knownOf(stands: Change): Known {
		let known = this.#stands.get(stands);
		if (known === undefined) {
			const [only, ...more] = stands.branches;
			const series =
				only !== undefined && more.length === 0 && stands.added.length === 0 && "seriesOhms" in only;
			const opened = series ? this.#knownOf(this.sound.net.opened(only.branch)) : undefined;
			known = { change: stands, opened, shown: new Array<Shown | undefined>(this.#groups.length) };
			this.#stands.set(stands, known);
		}
		return known;
	}

	#shownBy(group: number, known: Known): Shown {
		known.shown[group] ??= this.#find(this.#groups[group]!, known.change);
		return known.shown[group];
	}

	/**
	 * What the sound car shows, for ohms added in one run whose opening moves no automaton; else undefined.
	 *
	 * Added ohms move every voltage monotonically from its sound value towards that under an opening. So where both
	 * ends have the same states, ohms between have them too, and a number with two equal ends stays in its place.
	 */
	#unshaken(group: number, known: Known): Shown | undefined {
		const { opened } = known;
		if (opened === undefined) return undefined;
		const sound = this.#shownBy(group, this.#soundKnown);
		const open = this.#shownBy(group, opened);
		open.asSound ??=
			open.states === sound.states || open.states.every((state, k) => state === sound.states[k]);
		return open.asSound ? sound : undefined;
	}

	#find(group: Group, change: Change): Shown {
		group.batch ??= new Batch(this.sound.kept(group.seen.when, group.seen.dead), group.probes, TRUSTED_PIVOT);
		const numbers = new Float64Array(group.size);
		try {
			const { values, states } = group.batch.evaluate(change);
			for (const { thing, probe, factor } of group.use) numbers[thing]! += factor * values[probe]!;
			return { numbers, states };
		} catch (error) {
			// A relay that buzzes under this fault has no steady reading: nothing is predicted for it.
			if (!(error instanceof CircuitError)) throw error;
			return {
				numbers: numbers.fill(Number.NaN),
				states: this.sound.kept(group.seen.when, group.seen.dead).settled.states,
			};
		}
	}
}

/** Predicted numbers under any change, by one batch per condition, found when asked for and remembered. */
import { Batch, type Change, type Circuit, CircuitError, type Probe } from "../circuit/index.js";
import { type Seen, SoundCar } from "./quantities.js";

/** What one condition shows under a change. */
interface Shown {
	/** One number per thing seen in that condition; NaN is 'open' (no way between the points) or not settled. */
	readonly numbers: Float64Array;
	readonly states: Uint8Array;
}

interface Group {
	readonly seen: { readonly when: string; readonly dead: boolean };
	readonly probes: Probe[];
	/** Which probe of the batch stands for a term of a thing (numbered within the group). */
	readonly use: { readonly thing: number; readonly probe: number; readonly factor: number }[];
	size: number;
	batch: Batch | undefined;
}

export class Predictions {
	readonly #groups: Group[] = [];
	/** Group and place in it of each thing. */
	readonly #placeOf: { readonly group: number; readonly at: number }[] = [];
	/** What was found under a change, shared by all changes that it stands for; by condition. */
	readonly #known = new WeakMap<Change, { readonly change: Change; readonly shown: (Shown | undefined)[] }>();

	readonly sound: SoundCar;
	readonly #deviations: (number | undefined)[] = [];

	/** @param needed nodes that the changes asked about need (`nodesNeeded`) */
	constructor(
		circuit: Circuit,
		readonly things: readonly Seen[],
		needed: ReadonlySet<number>,
	) {
		const probes = things.flatMap(({ terms }) => terms.map(({ probe }) => probe));
		this.sound = new SoundCar(circuit, probes, needed);
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
		return this.#shown(group, change).numbers[at]!;
	}

	/** Standard deviation of a thing's number on a sound car, in its unit. */
	deviation(thing: number): number {
		this.#deviations[thing] ??= this.sound.deviation(this.things[thing]!);
		return this.#deviations[thing];
	}

	/** State of an automaton in the condition that a thing is seen in. */
	state(thing: number, automaton: number, change: Change): number {
		return this.#shown(this.#placeOf[thing]!.group, change).states[automaton]!;
	}

	#shown(group: number, change: Change): Shown {
		let known = this.#known.get(change);
		if (known === undefined) {
			const stands = this.sound.net.change(change);
			known = this.#known.get(stands);
			if (known === undefined) {
				known = { change: stands, shown: new Array<Shown | undefined>(this.#groups.length) };
				this.#known.set(stands, known);
			}
			this.#known.set(change, known);
		}
		known.shown[group] ??= this.#find(this.#groups[group]!, known.change);
		return known.shown[group];
	}

	#find(group: Group, change: Change): Shown {
		group.batch ??= new Batch(this.sound.kept(group.seen.when, group.seen.dead), group.probes);
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

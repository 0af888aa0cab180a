/** Predicted numbers under any change, by one batch per condition, remembered per change. */
import { Batch, type Change, CircuitError, type Probe } from "../circuit/index.js";
import type { Seen, SoundCar } from "./quantities.js";

export interface Predicted {
	/** One number per thing seen; NaN is 'open' (no way between the points) or not computable. */
	readonly numbers: Float64Array;
	/** Units that are powered, for each condition group in turn. */
	readonly powered: readonly ReadonlySet<string>[];
}

interface Group {
	readonly when: string;
	readonly dead: boolean;
	readonly batch: Batch;
	/** Which probe of the batch stands for term t of thing k. */
	readonly use: { readonly thing: number; readonly probe: number; readonly factor: number }[];
	readonly units: readonly { readonly part: string; readonly at: number; readonly powered: number }[];
}

export class Predictions {
	readonly #groups: Group[] = [];
	readonly #groupOf: Int32Array;
	readonly #known = new WeakMap<Change, Predicted>();

	constructor(
		sound: SoundCar,
		readonly things: readonly Seen[],
	) {
		const byKey = new Map<string, { when: string; dead: boolean; probes: Probe[]; use: Group["use"] }>();
		this.#groupOf = new Int32Array(things.length);
		const order: string[] = [];
		things.forEach((seen, thing) => {
			const key = `${seen.dead}|${seen.when}`;
			let group = byKey.get(key);
			if (group === undefined) {
				group = { when: seen.when, dead: seen.dead, probes: [], use: [] };
				byKey.set(key, group);
				order.push(key);
			}
			this.#groupOf[thing] = order.indexOf(key);
			for (const { probe, factor } of seen.terms)
				group.use.push({ thing, probe: group.probes.push(probe) - 1, factor });
		});
		for (const key of order) {
			const { when, dead, probes, use } = byKey.get(key)!;
			const point = sound.point(when, dead);
			const units = point.standing.automata.flatMap(({ spec }, at) =>
				spec.element === "power" ? [{ part: spec.part, at, powered: spec.states.length - 1 }] : [],
			);
			this.#groups.push({ when, dead, batch: new Batch(point, probes, dead), use, units });
		}
	}

	/** Index of the condition group a thing is seen in. */
	groupOf(thing: number): number {
		return this.#groupOf[thing]!;
	}

	under(change: Change): Predicted {
		const known = this.#known.get(change);
		if (known) return known;
		const numbers = new Float64Array(this.things.length);
		const powered = this.#groups.map((group) => {
			try {
				const { values, states } = group.batch.evaluate(change);
				for (const { thing, probe, factor } of group.use) numbers[thing]! += factor * values[probe]!;
				return new Set(group.units.filter((u) => states[u.at] === u.powered).map((u) => u.part));
			} catch (error) {
				// A relay that buzzes under this fault has no steady reading: nothing is predicted for it.
				if (!(error instanceof CircuitError)) throw error;
				for (const { thing } of group.use) numbers[thing] = Number.NaN;
				return new Set<string>();
			}
		});
		const result = { numbers, powered };
		this.#known.set(change, result);
		return result;
	}
}

/** Meter readings predicted under every fault; a reading once asked for is kept with all that was found of it. */
import type { Change, Circuit } from "../circuit/index.js";
import type { Question } from "../readings/index.js";
import { Predictions } from "./predictions.js";
import { readingSeen, type Seen, SoundCar } from "./quantities.js";

/** One reading's numbers. */
export interface Read {
	/** Under a change; NaN is 'open'. */
	number(change: Change): number;
	/** Standard deviation on a sound car, in its unit. */
	deviation(): number;
}

/** Words that tell a reading from every other. */
export function keyOf({ what, from, to, when }: Question): string {
	return `${what}|${from}|${to}|${when}`;
}

export class Reader {
	readonly #reads = new Map<string, Read | undefined>();
	/** Contacts and joints are points of their own here, so that all readings share one set of solutions. */
	#sound: SoundCar | undefined;

	/** @param needed nodes that the faults' changes need */
	constructor(
		readonly circuit: Circuit,
		readonly needed: ReadonlySet<number>,
	) {}

	/** Finds those not asked for before together, which is cheaper than one by one. */
	prepare(questions: readonly Question[]): void {
		const fresh = new Map<string, Seen>();
		for (const question of questions) {
			const key = keyOf(question);
			if (this.#reads.has(key)) continue;
			const seen = readingSeen(this.circuit, question);
			if (seen) fresh.set(key, seen);
			this.#reads.set(key, undefined);
		}
		if (fresh.size === 0) return;
		const things = [...fresh.values()];
		const shared = things.every((seen) => this.#kept(seen)) ? this.#soundCar() : undefined;
		const predictions = new Predictions(this.circuit, things, this.needed, shared);
		[...fresh.keys()].forEach((key, thing) => {
			this.#reads.set(key, {
				number: (change) => predictions.number(thing, change),
				deviation: () => predictions.deviation(thing),
			});
		});
	}

	/** Undefined where it cannot be predicted. */
	of(question: Question): Read | undefined {
		const key = keyOf(question);
		if (!this.#reads.has(key)) this.prepare([question]);
		return this.#reads.get(key);
	}

	/** The number of a change's condensed form: changes that come to the same at all contacts give the same object. */
	stands(change: Change): Change {
		return this.#soundCar().stands(change);
	}

	#soundCar(): SoundCar {
		this.#sound ??= new SoundCar(this.circuit, [], new Set([...this.needed, ...this.#points()]));
		return this.#sound;
	}

	#kept({ terms }: Seen): boolean {
		const points = this.#points();
		return terms.every(
			({ probe }) =>
				probe.kind === "amps" || [probe.a, probe.b].every((node) => node < 0 || points.has(node)),
		);
	}

	#known: ReadonlySet<number> | undefined;

	#points(): ReadonlySet<number> {
		const { loom } = this.circuit;
		this.#known ??= new Set(
			[...loom.contacts.keys(), ...loom.joints.keys()].flatMap((id) => this.circuit.node(id) ?? []),
		);
		return this.#known;
	}
}

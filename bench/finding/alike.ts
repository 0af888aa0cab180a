/** Whether any reading, in any way the car can stand, could tell two changes of the network apart. */
import type { Finder, NetworkChange, Question } from "@loomwright/engine";
import { deadCondition } from "../../packages/engine/src/find/candidates.js";
import { scaled, scaledDeviation } from "../../packages/engine/src/find/likelihood.js";

/** Deviations from which two values are told apart, as in the engine's outcomes. */
const APART = 4;

export class Alike {
	readonly #finder: Finder;
	readonly #questions: readonly (readonly Question[])[];
	readonly #known = new Map<string, boolean>();

	constructor(finder: Finder) {
		this.#finder = finder;
		const { circuit } = finder.watch;
		const { loom } = circuit;
		const minus = [...loom.contacts.values()].find(
			(c) => loom.parts.get(c.part)?.kind === "battery" && c.role === "-",
		)!;
		const dead = deadCondition(circuit);
		this.#questions = [...loom.conditions.keys()].map((when) =>
			[...loom.contacts.keys()]
				.filter((from) => from !== minus.id)
				.map((from): Question => ({ what: when === dead ? "ohms" : "volts", from, to: minus.id, when })),
		);
	}

	/** @param key names the two, for remembering */
	of(one: NetworkChange, two: NetworkChange): boolean {
		const { reader } = this.#finder.watch;
		if (reader.stands(one) === reader.stands(two)) return true;
		return this.#questions.every((questions) => {
			reader.prepare(questions);
			return questions.every((question) => {
				const read = reader.of(question)!;
				const x = read.number(one);
				const y = read.number(two);
				if (Number.isNaN(x) || Number.isNaN(y)) return Number.isNaN(x) === Number.isNaN(y);
				const near = APART * scaledDeviation(question.what, x, read.deviation());
				return Math.abs(scaled(question.what, x) - scaled(question.what, y)) < near;
			});
		});
	}
}

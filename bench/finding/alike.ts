/** Whether any volts or ohms against battery minus, in any way the car can stand, tell two changes of the network apart. */

import { deadCondition } from "../../packages/engine/src/find/candidates.js";
import { scaled, scaledDeviation } from "../../packages/engine/src/find/likelihood.js";
import { batteryMinus } from "../../packages/engine/src/find/quantities.js";
import type { Finder, NetworkChange, Question } from "../../packages/engine/src/index.js";

/** Deviations from which two values are told apart, as in the engine's outcomes. */
const APART = 4;

export class Alike {
	readonly #finder: Finder;
	readonly #questions: readonly (readonly Question[])[];

	constructor(finder: Finder) {
		this.#finder = finder;
		const { circuit } = finder.watch;
		const { loom } = circuit;
		const to = batteryMinus(loom)!;
		const dead = deadCondition(circuit);
		const contacts = [...loom.contacts.keys()].filter((from) => from !== to);
		this.#questions = [...loom.conditions.keys()].map((when) =>
			contacts.map((from): Question => ({ what: when === dead ? "ohms" : "volts", from, to, when })),
		);
	}

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

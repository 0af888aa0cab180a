/** Cars opened from their tables, the last few kept: opening and assembling one takes longer than asking of it. */
import { type Car, openCar } from "@loomwright/engine";
import { sortedJson } from "../store/entry/hash.js";
import { fingerprint } from "../store/jobs.js";

export class Cars {
	readonly #kept = new Map<string, Car>();

	constructor(readonly most = 4) {}

	/** @throws TableErrors */
	open(tables: Readonly<Record<string, string>>): Car {
		const key = fingerprint(sortedJson(tables));
		const car = this.#kept.get(key) ?? openCar(tables);
		this.#kept.delete(key);
		this.#kept.set(key, car);
		for (const oldest of this.#kept.keys()) {
			if (this.#kept.size <= this.most) break;
			this.#kept.delete(oldest);
		}
		return car;
	}
}

/** Gives the finders of cars what is kept of them; what is not is found on a thread apart, so that nobody waits for it. */
import { type Car, type Evidence, type Finder, finderOf } from "@loomwright/engine";
import { useKept } from "../../kept/effects.js";
import type { KeptFolder } from "../../kept/folder.js";
import { startThread } from "./thread.js";

/** So long after the last search of a car it is found what its faults do. */
const QUIET_MS = 10_000;

/** What the thread that finds it is told. */
export interface ToKeep {
	readonly folder: string;
	readonly tables: Readonly<Record<string, string>>;
	readonly evidence: Evidence;
}

export class EffectsKeeper {
	#waiting: NodeJS.Timeout | undefined;
	#busy = false;
	/** What could not be found is not tried for ever. */
	readonly #tried = new WeakSet<Finder>();

	constructor(
		readonly kept: KeptFolder,
		readonly quietMs = QUIET_MS,
	) {}

	/** To be called before a search. */
	give(car: Car, tables: ToKeep["tables"], evidence: Evidence): void {
		const finder = finderOf(car, evidence);
		if (useKept(finder, this.kept) || this.#tried.has(finder)) return;
		clearTimeout(this.#waiting);
		this.#waiting = setTimeout(() => {
			if (this.#busy) return;
			this.#busy = true;
			this.#tried.add(finder);
			const told: ToKeep = { folder: this.kept.folder, tables, evidence };
			startThread(new URL("./keeper.ts", import.meta.url), told)
				// Without what is kept a search takes longer, no more.
				.on("error", () => undefined)
				.on("exit", () => {
					this.#busy = false;
				});
		}, this.quietMs);
		this.#waiting.unref();
	}
}

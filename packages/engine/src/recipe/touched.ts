import type { Wire } from "../loom/index.js";

/**
 * What the hands were on: for each contact, wire, wire end, joint, connector and part the
 * steps that worked on it, in order. A connector counts as touched (opened) when a
 * contact in it was worked on; a fuse or relay is its own connector. Ids of what was
 * removed stay in the record.
 */
export interface Touched {
	readonly contacts: ReadonlyMap<string, readonly string[]>;
	readonly wires: ReadonlyMap<string, readonly string[]>;
	/** By `endKey`. */
	readonly ends: ReadonlyMap<string, readonly string[]>;
	readonly joints: ReadonlyMap<string, readonly string[]>;
	readonly connectors: ReadonlyMap<string, readonly string[]>;
	/** Parts removed or fitted. */
	readonly parts: ReadonlyMap<string, readonly string[]>;
}

export type Side = "from" | "to";

/** Key of one end of a wire in `Touched.ends`. */
export const endKey = (wire: Wire | string, side: Side): string =>
	`${typeof wire === "string" ? wire : wire.id}@${side}`;

/** The record while it is being written: step by step, kept or dropped as a whole. */
export class TouchLog {
	readonly #log = {
		contacts: new Map<string, string[]>(),
		wires: new Map<string, string[]>(),
		ends: new Map<string, string[]>(),
		joints: new Map<string, string[]>(),
		connectors: new Map<string, string[]>(),
		parts: new Map<string, string[]>(),
	};
	#staged: ((step: string) => void)[] = [];

	touch(what: keyof Touched, id: string): void {
		this.#staged.push((step) => {
			const steps = this.#log[what].get(id);
			if (steps === undefined) this.#log[what].set(id, [step]);
			else if (steps.at(-1) !== step) steps.push(step);
		});
	}

	/** The history of `from` goes to `to` as well (`share`) or leaves `from` (`move`): a cut wire's far half. */
	inherit(what: keyof Touched, from: string, to: string, how: "share" | "move"): void {
		this.#staged.push(() => {
			const steps = this.#log[what].get(from);
			if (steps === undefined) return;
			this.#log[what].set(to, [...steps]);
			if (how === "move") this.#log[what].delete(from);
		});
	}

	keep(step: string): void {
		for (const write of this.#staged) write(step);
		this.#staged = [];
	}

	drop(): void {
		this.#staged = [];
	}

	record(): Touched {
		return this.#log;
	}
}

/** No hand was on the car. */
export const NOTHING_TOUCHED: Touched = {
	contacts: new Map(),
	wires: new Map(),
	ends: new Map(),
	joints: new Map(),
	connectors: new Map(),
	parts: new Map(),
};

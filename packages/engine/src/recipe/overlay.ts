/**
 * A table that can be tried out: reads see the staged rows first, then the kept ones.
 *
 * The base map is never written to; the first kept change copies it, so tables that no
 * step changes are shared with the loom they came from.
 */
export class Overlay<T> {
	#kept: ReadonlyMap<string, T>;
	#own: Map<string, T> | undefined;
	readonly #staged = new Map<string, T | undefined>();

	constructor(base: ReadonlyMap<string, T>) {
		this.#kept = base;
	}

	get(id: string): T | undefined {
		return this.#staged.has(id) ? this.#staged.get(id) : this.#kept.get(id);
	}

	has(id: string): boolean {
		return this.get(id) !== undefined;
	}

	put(id: string, value: T): void {
		this.#staged.set(id, value);
	}

	remove(id: string): void {
		this.#staged.set(id, undefined);
	}

	/** Makes the staged rows part of the table. Cost: the rows staged, and one copy of the table the first time. */
	keep(): void {
		for (const [id, value] of this.#staged) {
			this.#own ??= new Map(this.#kept);
			this.#kept = this.#own;
			if (value === undefined) this.#own.delete(id);
			else this.#own.set(id, value);
		}
		this.#staged.clear();
	}

	/** Forgets the staged rows. */
	drop(): void {
		this.#staged.clear();
	}

	/** Another that begins with the rows kept here; from now on neither sees what the other keeps. */
	fork(): Overlay<T> {
		this.#own = undefined;
		return new Overlay(this.#kept);
	}

	/** Rows staged and not yet kept or dropped; `undefined` marks a row taken out. */
	staged(): ReadonlyMap<string, T | undefined> {
		return this.#staged;
	}

	/** The kept table, in the order of the base with new rows at the end. */
	kept(): ReadonlyMap<string, T> {
		return this.#kept;
	}
}

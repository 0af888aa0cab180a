/** Large arrays that one condition after another is worked on in: memory fresh from the system costs more than the rows. */
export class Shelf {
	#free: Float64Array[] = [];
	#lent: Float64Array[] = [];

	/** Zeros, until `clear`. */
	take(length: number): Float64Array {
		const at = this.#free.findIndex((array) => array.length === length);
		const array = at < 0 ? new Float64Array(length) : this.#free.splice(at, 1)[0]!.fill(0);
		this.#lent.push(array);
		return array;
	}

	/** Takes back all that was lent since the last time; what was left over then is given up. */
	clear(): void {
		this.#free = this.#lent;
		this.#lent = [];
	}
}

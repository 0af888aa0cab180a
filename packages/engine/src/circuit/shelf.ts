/** What a new array has to spare: the next condition looks at a few points more or fewer. */
const SPARE = 1.25;

/** Large arrays that one condition after another is worked on in: memory fresh from the system costs more than the rows. */
export class Shelf {
	#free: Float64Array[] = [];
	#lent: Float64Array[] = [];

	/** Its own until `clear`; it may hold anything. */
	take(length: number): Float64Array {
		const at = this.#free.findIndex((array) => array.length >= length && array.length <= 2 * length);
		const array = at < 0 ? new Float64Array(Math.ceil(SPARE * length)) : this.#free.splice(at, 1)[0]!;
		this.#lent.push(array);
		return array.subarray(0, length);
	}

	/** Takes back all that was lent. */
	clear(): void {
		this.#free.push(...this.#lent);
		this.#lent = [];
	}
}

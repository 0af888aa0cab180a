/** Numbers from 0 met since it was last asked anew; nothing is cleared in between. */
export class Once {
	readonly #met: Int32Array;
	#now = 0;

	/** @param count of numbers */
	constructor(count: number) {
		this.#met = new Int32Array(count);
	}

	anew(): this {
		this.#now++;
		return this;
	}

	/** True the first time. */
	isNew(number: number): boolean {
		if (this.#met[number] === this.#now) return false;
		this.#met[number] = this.#now;
		return true;
	}
}

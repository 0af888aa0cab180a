/** Draws from a seed, so that every run of the bench meets the same cars. */

export interface Random {
	/** Uniform on (0, 1). */
	uniform(): number;
	/** Standard normal deviate. G. E. P. Box, M. E. Muller, Ann. Math. Stat. 29, 1958. */
	normal(): number;
}

/** G. L. Steele, D. Lea, C. H. Flood, 'Fast splittable pseudorandom number generators', 2014; its 32-bit form. */
export function randomOf(seed: number): Random {
	let state = seed | 0;
	const uniform = () => {
		state = (state + 0x9e3779b9) | 0;
		let z = state ^ (state >>> 16);
		z = Math.imul(z, 0x21f0aaad);
		z ^= z >>> 15;
		z = Math.imul(z, 0x735a2d97);
		return ((z ^ (z >>> 15)) >>> 0) / 4294967296 + 2 ** -33;
	};
	return {
		uniform,
		normal: () => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform()),
	};
}

/** One of a list, drawn by weight. */
export function drawn<T>(list: readonly T[], weight: (one: T) => number, { uniform }: Random): T {
	let left = uniform() * list.reduce((sum, one) => sum + weight(one), 0);
	for (const one of list) {
		left -= weight(one);
		if (left <= 0) return one;
	}
	return list.at(-1)!;
}

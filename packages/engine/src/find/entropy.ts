/** Bits of an outcome that comes with these chances. */
export function entropy(chances: readonly number[]): number {
	return -chances.reduce((sum, p) => sum + (p > 0 ? p * Math.log2(p) : 0), 0);
}

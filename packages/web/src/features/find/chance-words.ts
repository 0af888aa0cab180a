/** Small chances in words. */

/** `1 in 1,000`; from a tenth on, per cent. */
export function chanceWords(chance: number): string {
	if (chance <= 0) return "none";
	if (chance >= 0.1) return `${Math.round(100 * chance)} %`;
	return `1 in ${Number((1 / chance).toPrecision(2)).toLocaleString("en")}`;
}

/** `2.3 times`, `the same`. */
export function timesFactor(factor: number): string {
	const rounded = Number(factor.toPrecision(2));
	return rounded === 1 ? "the same" : `${rounded} times`;
}

const chunks = (text: string): string[] => text.match(/\d+|\D+/g) ?? [];

/**
 * Orders names as people count: `A2` before `A10`, the empty name last. Runs of digits by
 * value, the rest by code unit, so the order is the same on every machine.
 */
export function naturalOrder(a: string, b: string): number {
	if (a === "" || b === "") return Number(a === "") - Number(b === "");
	const left = chunks(a);
	const right = chunks(b);
	for (let i = 0; i < Math.min(left.length, right.length); i++) {
		const [x, y] = [left[i]!, right[i]!];
		const byValue = /^\d/.test(x) && /^\d/.test(y) ? Number(x) - Number(y) : 0;
		if (byValue !== 0) return byValue;
		if (x !== y) return x < y ? -1 : 1;
	}
	return left.length - right.length;
}

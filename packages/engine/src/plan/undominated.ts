/** Options that need not be looked at. */
import type { Situation } from "./situation.js";
import type { Option, Price } from "./types.js";

/**
 * Without options that two others are never worse than: such an option is neither the best nor, the best
 * forbidden, the second best. Options of the same words are forbidden together. One is never worse than
 * another if it costs no more even where it pays all its shared costs alone, and asks for nothing that the
 * other does not ask for as well.
 */
export function undominated(at: Situation, options: readonly Option[]): Option[] {
	const within = (a: readonly string[], b: readonly string[]) => a.every((one) => b.includes(one));
	const total = (price: Price) => at.costs.total(price);
	const better = (a: Option, b: Option): boolean => {
		if (a.lies !== b.lies || !within(a.uses, b.uses) || !within(a.needs, b.needs) || !within(a.bars, b.bars))
			return false;
		if (b.allNew && !a.allNew) return false;
		let cost = total(a.own);
		for (const [key, price] of a.shared) if (!b.shared.has(key)) cost += total(price);
		return cost <= total(b.own);
	};
	const sorted = [...options].sort((a, b) => total(a.own) - total(b.own));
	// Of two that are as good as each other, the first one counts.
	return sorted.filter((one, k) => {
		const by = new Set<string>();
		sorted.forEach((other, j) => {
			if (j !== k && better(other, one) && (j < k || !better(one, other))) by.add(other.text);
		});
		return by.size < 2 && !by.has(one.text);
	});
}

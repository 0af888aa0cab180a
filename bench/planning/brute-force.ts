/** Every way to make all circuits tried out: the rules said once more, without a program or a bound. */
import type { Costs } from "../../packages/engine/src/plan/costs.js";
import type { Choices } from "../../packages/engine/src/plan/options.js";
import type { Option, Price } from "../../packages/engine/src/plan/types.js";

export interface Cheapest {
	/** Minutes; infinite where no whole is possible. */
	readonly best: number;
	/** The same of the wholes without an option that the first, the second ... of `forbidden` speaks of. */
	readonly without: readonly number[];
}

/** @param pairs circuits that lie together */
export function cheapest(
	{ options, facilities }: Choices,
	circuits: readonly string[],
	costs: Costs,
	pairs: readonly (readonly string[])[],
	forbidden: readonly ((option: Option) => boolean)[],
): Cheapest {
	const lists = circuits.map((circuit) => options.filter((option) => option.circuit === circuit));
	let best = Number.POSITIVE_INFINITY;
	const without = forbidden.map(() => Number.POSITIVE_INFINITY);
	const chosen: Option[] = [];
	const go = (k: number): void => {
		if (k === lists.length) {
			if (!pairs.every((pair) => liesTogether(pair, chosen))) return;
			const minutes = priceOf(chosen, facilities, costs);
			best = Math.min(best, minutes);
			forbidden.forEach((is, at) => {
				if (minutes < without[at]! && !chosen.some(is)) without[at] = minutes;
			});
			return;
		}
		for (const option of lists[k]!) {
			chosen.push(option);
			go(k + 1);
			chosen.pop();
		}
	};
	go(0);
	return { best, without };
}

/** The circuits of a pair go the same way. */
function liesTogether(pair: readonly string[], chosen: readonly Option[]): boolean {
	return new Set(chosen.filter(({ circuit }) => pair.includes(circuit)).map(({ lies }) => lies)).size <= 1;
}

/** How many wholes there are to try. */
export const wholes = ({ options }: Choices, circuits: readonly string[]): number =>
	circuits.reduce(
		(product, circuit) => product * options.filter((option) => option.circuit === circuit).length,
		1,
	);

/** Minutes of some options together; infinite where they do not go together. */
function priceOf(chosen: readonly Option[], facilities: Choices["facilities"], costs: Costs): number {
	const needed = new Set(chosen.flatMap(({ needs }) => needs));
	if (chosen.some(({ bars }) => bars.some((id) => needed.has(id)))) return Number.POSITIVE_INFINITY;
	const built = facilities.filter(({ id }) => needed.has(id));
	const used = new Set<string>();
	for (const { uses } of [...chosen, ...built])
		for (const name of uses) {
			if (used.has(name)) return Number.POSITIVE_INFINITY;
			used.add(name);
		}
	let total = 0;
	const once = new Map<string, Price>();
	for (const { own, shared } of [...chosen, ...built]) {
		total += costs.total(own);
		for (const [key, price] of shared) once.set(key, price);
	}
	for (const price of once.values()) total += costs.total(price);
	return total;
}

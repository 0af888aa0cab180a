/** Every way to make all circuits tried out: the rules said once more, without a program or a bound. */
import type { Costs } from "../../packages/engine/src/plan/costs.js";
import type { Choices } from "../../packages/engine/src/plan/options.js";
import type { Option, Price } from "../../packages/engine/src/plan/types.js";

/** @returns the cheapest whole in minutes, infinite where there is none. @param forbidden one option not to be used */
export function cheapest(
	{ options, facilities }: Choices,
	circuits: readonly string[],
	costs: Costs,
	forbidden?: (option: Option) => boolean,
): number {
	const lists = circuits.map((circuit) =>
		options.filter((option) => option.circuit === circuit && forbidden?.(option) !== true),
	);
	let best = Number.POSITIVE_INFINITY;
	const chosen: Option[] = [];
	const go = (k: number): void => {
		if (k === lists.length) {
			best = Math.min(best, priceOf(chosen, facilities, costs));
			return;
		}
		for (const option of lists[k]!) {
			chosen.push(option);
			go(k + 1);
			chosen.pop();
		}
	};
	go(0);
	return best;
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

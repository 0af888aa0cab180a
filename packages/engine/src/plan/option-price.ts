/** What an option's steps cost it alone, and what it shares with others. */
import { plus } from "./costs.js";
import { isNewName } from "./leg.js";
import { Pricer } from "./price.js";
import type { Situation } from "./situation.js";
import type { Price, Step } from "./types.js";

/** The steps' price; joints that the steps themselves make are nobody else's. */
export function priceOf(at: Situation, steps: readonly Step[]): { own: Price; shared: Map<string, Price> } {
	const priced = new Pricer(at.costs, at.places, at.base, at.fresh).price(steps);
	let own = priced.own;
	const shared = new Map<string, Price>();
	for (const [key, price] of priced.shared) {
		const [, joint = ""] = /^joint (.*)$/.exec(key) ?? [];
		if (isNewName(joint)) own = plus(own, price);
		else if (!at.paid.has(key)) shared.set(key, price);
	}
	return { own, shared };
}

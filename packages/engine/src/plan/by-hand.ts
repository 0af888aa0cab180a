/** A recipe written by hand, priced in the same table as a proposal. */
import type { LoomTables } from "../loom/index.js";
import { Costs, plus } from "./costs.js";
import { Places } from "./places.js";
import { Pricer } from "./price.js";
import type { PlanTables, Price } from "./types.js";

export interface ByHand {
	readonly price: Price;
	/** All of it in minutes. */
	readonly minutes: number;
	readonly joints: number;
}

/** The recipe of recipe.csv; the minutes in its rows count only for parts that go and come, as in a proposal. */
export function priceByHand(
	car: Pick<LoomTables, "delivered" | "newParts" | "recipe">,
	plan: PlanTables,
): ByHand {
	const costs = new Costs(plan.costs);
	const places = new Places(car.delivered, car.newParts, plan.places);
	const { own, shared } = new Pricer(costs, places, car.delivered, car.newParts).price(car.recipe);
	const price = [...shared.values()].reduce(plus, own);
	const links = car.recipe.filter(({ kind }) => kind === "bridge").length;
	const joints = [...shared.keys()].filter((key) => key.startsWith("joint ")).length + links;
	return { price, minutes: costs.total(price), joints };
}

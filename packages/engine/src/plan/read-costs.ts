import { didYouMean, type Row } from "../tables/index.js";
import { DEFAULT_COSTS, wallName } from "./costs.js";
import { parseAmount } from "./parse-amount.js";
import type { CostRow, PlanTables } from "./types.js";

export const COSTS = {
	item: "required",
	zone: "optional",
	minutes: "optional",
	price: "optional",
	value: "optional",
	note: "optional",
} as const;

export function readCosts(rows: readonly Row<keyof typeof COSTS>[]): PlanTables["costs"] {
	const costs = new Map<string, CostRow>();
	for (const row of rows) {
		const item = row.text("item");
		const before = DEFAULT_COSTS.get(item);
		if (item !== "" && before === undefined)
			row.refuse(
				"item",
				`"${item}" is no cost item`,
				didYouMean(item, DEFAULT_COSTS.keys(), `one of ${[...DEFAULT_COSTS.keys()].join(", ")}`),
			);
		const zones = row.text("zone");
		const zone =
			item === "passage" && zones.includes("/")
				? wallName(...(zones.split("/", 2) as [string, string]))
				: zones;
		if (item === "passage" && !zones.includes("/"))
			row.refuse(
				"zone",
				`"${zones}" is not two zones`,
				"the zones on both sides of the wall, e.g. cabin/engine bay",
			);
		const key = zone === "" ? item : `${item} ${zone}`;
		if (costs.has(key)) row.refuse("item", `"${key}" has a row already`, "one row for each item and zone");
		const amounts = {
			minutes: row.read("minutes", parseAmount) ?? before?.minutes ?? 0,
			price: row.read("price", parseAmount) ?? before?.price ?? 0,
			value: row.read("value", parseAmount) ?? before?.value ?? 0,
		};
		if (!row.faulty) costs.set(key, { ...amounts, note: row.text("note") });
	}
	return costs;
}

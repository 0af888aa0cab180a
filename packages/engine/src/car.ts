/**
 * A car in the shop, opened from its tables: the loom as delivered, the recipe applied, the loom as converted.
 */
import { Circuit } from "./circuit/index.js";
import { checkDevices } from "./devices/index.js";
import { type Loom, type LoomTables, readTables } from "./loom/index.js";
import { applyRecipe, loomAs, type Misfit, type Touched } from "./recipe/index.js";
import { TableErrors } from "./tables/index.js";

export type Which = "delivered" | "converted";

export interface Car {
	readonly tables: LoomTables;
	readonly delivered: Loom;
	readonly converted: Loom;
	/** Recipe steps that do not fit this car, with why. */
	readonly misfits: readonly Misfit[];
	readonly touched: Touched;
	/** The assembled network of either loom; assembled once. */
	circuit(which: Which): Circuit;
}

/**
 * Opens a car from its tables.
 * @param files file name to text, e.g. `{ "parts.csv": "part,kind\n..." }`
 * @throws TableErrors with every fault of every table
 */
export function openCar(files: Readonly<Record<string, string>>): Car {
	const tables = readTables(files);
	const errors = tables.errors.length > 0 ? tables.errors : checkDevices(tables);
	if (errors.length > 0) throw new TableErrors(errors);
	const result = applyRecipe(tables.delivered, tables.recipe, tables.newParts);
	const delivered = loomAs(tables.delivered, "delivered");
	const converted = loomAs(result.loom, "converted");
	const circuits = new Map<Which, Circuit>();
	return {
		tables,
		delivered,
		converted,
		misfits: result.misfits,
		touched: result.touched,
		circuit(which) {
			let circuit = circuits.get(which);
			if (circuit === undefined) {
				circuit = new Circuit(which === "delivered" ? delivered : converted);
				circuits.set(which, circuit);
			}
			return circuit;
		},
	};
}

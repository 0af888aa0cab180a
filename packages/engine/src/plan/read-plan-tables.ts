/** targets.csv, costs.csv and places.csv (docs/plan.md): read whole, every error at once, nothing half taken. */
import type { LoomTables } from "../loom/index.js";
import { openTable, readTable, type TableError, TableErrors } from "../tables/index.js";
import { COSTS, readCosts } from "./read-costs.js";
import { PLACES, readPlaces } from "./read-places.js";
import { readTargets, TARGETS } from "./read-targets.js";
import type { PlanTables } from "./types.js";

/** Names of the tables, without ending. */
export const PLAN_TABLES = ["targets", "costs", "places"] as const;

/**
 * The plan's tables out of a car's folder. `targets.csv` must be there; the others may be left out.
 * @param files text by file name, as for `readTables`
 * @throws TableErrors with every error of the three tables
 */
export function readPlanTables(files: Readonly<Record<string, string>>, car: LoomTables): PlanTables {
	const errors: TableError[] = [];
	const rows = <Column extends string>(
		name: string,
		schema: Readonly<Record<Column, "required" | "optional">>,
	) => {
		const file = Object.keys(files).find(
			(given) => /([^/\\]*)\.(csv|tsv|tab|txt)$/i.exec(given)?.[1]?.toLowerCase() === name,
		);
		if (file === undefined) return undefined;
		return openTable(readTable(file, files[file]!, errors), schema, errors).rows;
	};
	const targets = rows("targets", TARGETS);
	if (targets === undefined)
		errors.push({
			file: "targets.csv",
			row: 0,
			column: "",
			problem: "the table is missing",
			wanted: "a file targets.csv with a row for each circuit wanted (docs/plan.md)",
		});
	const plan = {
		...readTargets(targets ?? [], car),
		costs: readCosts(rows("costs", COSTS) ?? []),
		places: readPlaces(rows("places", PLACES) ?? []),
	};
	if (errors.length > 0) throw new TableErrors(errors);
	return plan;
}

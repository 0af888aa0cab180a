/** What would happen if one cell of the tables were another, or one step of the recipe were left out. */
import { type Car, openCar, type Which } from "./car.js";
import { type Effects, effectsOf } from "./effects/index.js";
import { SCHEMAS, type TableName } from "./loom/index.js";
import { didYouMean, readTable, type TableError, TableErrors, writeTable } from "./tables/index.js";

/** A wire's size, its end, a fuse's amps, a step's place: whatever stands in one cell. */
export interface CellChange {
	/** File name without its ending. */
	readonly table: string;
	/** What stands in the table's first column in that row; the first such row. */
	readonly row: string;
	readonly column: string;
	readonly cell: string;
}

/** One of: a cell, a recipe step left out. */
export type Supposed = CellChange | { readonly without: string };

export interface Cost {
	/** Work of the recipe. */
	readonly minutes: number;
	readonly splices: number;
	/** Of wire that the recipe brings. */
	readonly metres: number;
}

export interface WhatIf extends Effects {
	readonly car: Car;
	readonly cost: { readonly before: Cost; readonly after: Cost };
}

/**
 * @param car as it is, opened from `files`
 * @throws TableErrors where there is no such cell, or the tables are wrong with it
 */
export function whatIf(
	car: Car,
	files: Readonly<Record<string, string>>,
	supposed: Supposed,
	which: Which = "converted",
): WhatIf {
	const after = openCar(supposedFiles(files, supposed));
	const delivered = () => ({ before: car.circuit("delivered"), after: deliveredAfter(car, after, supposed) });
	const effects = effectsOf(
		car.circuit(which),
		after.circuit(which),
		which === "converted" ? delivered() : undefined,
	);
	return { ...effects, car: after, cost: { before: costOf(car), after: costOf(after) } };
}

/**
 * The tables as they would be.
 * @throws TableErrors where there is no such cell or step
 */
export const supposedFiles = (files: Files, supposed: Supposed): Files =>
	"without" in supposed ? withoutStep(files, supposed.without) : withCell(files, supposed);

/** What only the recipe reads leaves the loom as delivered as it was: no need to solve it anew. */
function deliveredAfter(car: Car, after: Car, supposed: Supposed) {
	const onlyRecipe =
		"without" in supposed || supposed.table === "recipe" || supposed.table.startsWith("new-");
	return onlyRecipe ? car.circuit("delivered") : after.circuit("delivered");
}

type Files = Readonly<Record<string, string>>;

function withCell(files: Files, { table, row, column, cell }: CellChange): Files {
	const file = `${table}.csv`;
	if (!Object.hasOwn(SCHEMAS, table))
		refuse(
			file,
			0,
			"",
			`there is no table "${table}"`,
			didYouMean(table, Object.keys(SCHEMAS), `one of ${Object.keys(SCHEMAS).join(", ")}`),
		);
	const { columns, rows } = tableOf(files, file);
	const known = Object.keys(SCHEMAS[table as TableName]);
	const key = known[0]!;
	const at = indexOf(columns, key);
	const found = rows.findIndex((cells) => cells[at]?.trim() === row);
	if (found < 0)
		refuse(
			file,
			0,
			key,
			`there is no row "${row}"`,
			didYouMean(
				row,
				rows.map((cells) => cells[at] ?? ""),
				`a ${key} of the table`,
			),
		);
	if (!known.includes(column))
		refuse(
			file,
			1,
			column,
			`there is no column "${column}" in this table`,
			didYouMean(column, known, `one of ${known.join(", ")}`),
		);
	const to = indexOf(columns, column);
	const header = to < 0 ? [...columns, column] : columns;
	const changed = rows.map((cells, k) => {
		const all = to < 0 && cells.length === columns.length ? [...cells, ""] : [...cells];
		if (k === found) all[to < 0 ? columns.length : to] = cell;
		return all;
	});
	return { ...files, [file]: writeTable({ columns: header, rows: changed }, newlineOf(files[file])) };
}

function withoutStep(files: Files, step: string): Files {
	const { columns, rows } = tableOf(files, "recipe.csv");
	const at = indexOf(columns, "step");
	const kept = rows.filter((cells) => cells[at]?.trim() !== step);
	if (kept.length === rows.length)
		refuse("recipe.csv", 0, "step", `there is no step "${step}"`, "a step of the recipe");
	return { ...files, "recipe.csv": writeTable({ columns, rows: kept }, newlineOf(files["recipe.csv"])) };
}

function tableOf(files: Files, file: string) {
	const text = files[file];
	if (text === undefined)
		return refuse(file, 0, "", "the car has no such table", `one of ${Object.keys(files).join(", ")}`);
	const errors: TableError[] = [];
	const table = readTable(file, text, errors);
	if (errors.length > 0) throw new TableErrors(errors);
	return table;
}

/** As the table has it, so that no other line is another. */
const newlineOf = (text = "") => (text.includes("\r\n") ? "\r\n" : "\n");

const indexOf = (columns: readonly string[], column: string) =>
	columns.findIndex((title) => title.trim().toLowerCase() === column);

function refuse(file: string, row: number, column: string, problem: string, wanted: string): never {
	throw new TableErrors([{ file, row, column, problem, wanted }]);
}

function costOf({ tables, delivered, converted }: Car): Cost {
	const added = [...converted.wires.values()].filter((wire) => !delivered.wires.has(wire.id));
	const made = new Set(tables.recipe.map((step) => step.fresh).filter((id) => id !== ""));
	return {
		minutes: tables.recipe.reduce((sum, step) => sum + (step.minutes ?? 0), 0),
		splices: [...converted.joints.values()].filter((joint) => joint.kind === "splice").length,
		metres: added.filter((wire) => made.has(wire.id)).reduce((sum, wire) => sum + wire.metres, 0),
	};
}

import type { TableError } from "./errors.js";
import { didYouMean } from "./nearest.js";
import type { Table } from "./read-table.js";
import { Row } from "./row.js";

/** The columns a table may have, and which of them it must. */
export type Schema<Column extends string = string> = Readonly<Record<Column, "required" | "optional">>;

export interface OpenTable<Column extends string> {
	/**
	 * Every row that is not empty. One with more or fewer cells than the header is reported once, and
	 * comes as a faulty row whose further errors are not: its cells may have slipped into other columns.
	 */
	readonly rows: readonly Row<Column>[];
	/** False where a required column is missing: the rows then say too little to build on. */
	readonly usable: boolean;
}

/**
 * Holds a table against its schema. Errors: unknown, unnamed, repeated and missing columns; rows with
 * more or fewer cells than the header; empty cells of required columns. Column names are read without
 * regard to letter case.
 */
export function openTable<Column extends string>(
	table: Table,
	schema: Schema<Column>,
	errors: TableError[],
): OpenTable<Column> {
	const known = Object.keys(schema) as Column[];
	const required = known.filter((column) => schema[column] === "required");
	const index = readHeader(table, known, errors);
	const missing = required.filter((column) => !index.has(column));
	for (const column of missing) {
		const wanted = `a column named ${column}; required are ${required.join(", ")}`;
		errors.push({ file: table.file, row: 1, column, problem: `the column "${column}" is missing`, wanted });
	}
	const usable = missing.length === 0;
	if (!usable) return { rows: [], usable };

	const width = table.columns.length;
	const rows: Row<Column>[] = [];
	table.rows.forEach((cells, at) => {
		if (cells.every((cell) => cell.trim() === "")) return;
		const ragged = cells.length !== width;
		const row = new Row<Column>(table.file, at + 2, cells, index, ragged ? [] : errors);
		rows.push(row);
		if (ragged) {
			row.faulty = true;
			const hint = cells.length > width ? "; a cell with a comma in it stands in quote marks" : "";
			const problem = `the row has ${count(cells.length)}, the header ${width}`;
			errors.push({ file: table.file, row: row.row, column: "", problem, wanted: `${count(width)}${hint}` });
			return;
		}
		for (const column of required)
			if (row.text(column) === "") row.refuse(column, "the cell is empty", `a ${column}`);
	});
	return { rows, usable };
}

function count(cells: number): string {
	return cells === 1 ? "1 cell" : `${cells} cells`;
}

/** Position of each known column; faults of the header go to `errors`. */
function readHeader(
	table: Table,
	known: readonly string[],
	errors: TableError[],
): ReadonlyMap<string, number> {
	const index = new Map<string, number>();
	const refuse = (column: string, problem: string, wanted: string) => {
		errors.push({ file: table.file, row: 1, column, problem, wanted });
	};
	table.columns.forEach((title, at) => {
		const column = title.trim().toLowerCase();
		if (column === "") {
			if (table.rows.some((row) => (row[at] ?? "").trim() !== "")) {
				refuse("", `column ${at + 1} holds text but has no name`, "a name in the header");
			}
		} else if (!known.includes(column)) {
			const wanted = didYouMean(column, known, `one of ${known.join(", ")}`);
			refuse(title.trim(), `there is no column "${title.trim()}" in this table`, wanted);
		} else if (index.has(column)) {
			const wanted = "each column once; two values in one cell are separated by ;";
			refuse(column, `the column "${column}" stands in the header twice`, wanted);
		} else {
			index.set(column, at);
		}
	});
	return index;
}

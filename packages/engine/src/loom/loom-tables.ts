import type { TableError } from "../tables/index.js";
import type { NewParts, RecipeTable } from "./recipe-row.js";
import type { Loom } from "./types.js";

/** What stands in a row of its own and can be pointed at. */
export type RowKind =
	| "part"
	| "contact"
	| "wire"
	| "joint"
	| "condition"
	| "setting"
	| "monitor"
	| "function"
	| "step";

/** A row of a table: the file as it was given, and the row as a spreadsheet counts (the header is row 1). */
export interface Place {
	readonly file: string;
	readonly row: number;
}

/** A folder of tables, read. Where `errors` is not empty, faulty rows are left out of the rest: do not compute with it. */
export interface LoomTables {
	/** The loom as delivered. Conditions, monitors and functions may name new parts too. */
	readonly delivered: Loom;
	readonly recipe: RecipeTable;
	readonly newParts: NewParts;
	/** Every error of every table, in the order of files and rows. */
	readonly errors: readonly TableError[];
	/**
	 * The row that says this, for errors found later.
	 *
	 * `id` is the name (parts, contacts, wires, joints, conditions, steps; new ones as well), the
	 * index in `delivered.monitors` or `delivered.functions`, or for `setting` the subject, with the
	 * condition as `within`.
	 */
	locate(kind: RowKind, id: string | number, within?: string): Place | undefined;
}

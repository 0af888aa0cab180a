/** One thing wrong in a table: where, what, and what would be right. */
export interface TableError {
	/** The file as it was named by the caller. */
	readonly file: string;
	/** Row as a spreadsheet counts: the header is row 1. 0: the file as a whole, e.g. because it is missing. */
	readonly row: number;
	/** The column's name; empty where the whole row or file is meant. */
	readonly column: string;
	readonly problem: string;
	readonly wanted: string;
}

/** One error as a line of text: `wires.csv, row 4, column size: "x" is not a wire size. Wanted: ...`. */
export function formatTableError(error: TableError): string {
	const where = [error.file];
	if (error.row > 0) where.push(`row ${error.row}`);
	if (error.column !== "") where.push(`column ${error.column}`);
	return `${where.join(", ")}: ${error.problem}. Wanted: ${error.wanted}`;
}

/** Thrown where tables must be right to go on. Holds all errors, not only the first. */
export class TableErrors extends Error {
	override readonly name = "TableErrors";
	readonly errors: readonly TableError[];

	constructor(errors: readonly TableError[]) {
		super(errors.map(formatTableError).join("\n"));
		this.errors = errors;
	}
}

import type { Table } from "./read-table.js";

/**
 * The table as comma-separated text after RFC 4180. Reading it again gives the same cells.
 * Line ends are CRLF as the standard has them, unless told otherwise.
 */
export function writeTable(table: Pick<Table, "columns" | "rows">, newline: "\r\n" | "\n" = "\r\n"): string {
	// Also tabs and semicolons in the header: there they would pass for the delimiter.
	const header = line(table.columns, /[",;\t\r\n]|^\ufeff/);
	return [header, ...table.rows.map((row) => line(row, /[",\r\n]/))].map((text) => text + newline).join("");
}

function line(cells: readonly string[], special: RegExp): string {
	// A lone empty cell needs its quotes, else the line would be empty at the end of the text.
	if (cells.length <= 1 && (cells[0] ?? "") === "") return '""';
	return cells.map((cell) => (special.test(cell) ? `"${cell.replaceAll('"', '""')}"` : cell)).join(",");
}

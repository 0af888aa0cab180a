/** Rows of a table's text, changed one at a time; what is not touched stays as it was spelled. */
import { readTable, writeTable } from "@loomwright/engine";

/** Cells by column. */
export type TableRow = Readonly<Record<string, string>>;

/** Rows with anything in them, in order; of no text, none. */
export function rowsOf(text: string): TableRow[] {
	const { columns, rows } = tableOf(text);
	return rows.map((cells) =>
		Object.fromEntries(columns.map((column, k) => [column, cells[k]?.trim() ?? ""])),
	);
}

/**
 * The text with one row as given. Columns it needs are added at the end.
 * @param at place among `rowsOf`; their number: a new row at the end
 * @param row undefined: the row goes
 */
export function withRow(text: string, at: number, row: TableRow | undefined): string {
	const { columns, rows } = tableOf(text);
	if (row === undefined) return writeTable({ columns, rows: rows.filter((_, k) => k !== at) }, "\n");
	const added = Object.keys(row).filter((column) => row[column] !== "" && !columns.includes(column));
	const all = [...columns, ...added];
	const kept = rows.map((cells) => all.map((_, k) => cells[k] ?? ""));
	const cells = all.map((column) => row[column] ?? "");
	return writeTable({ columns: all, rows: at < kept.length ? kept.with(at, cells) : [...kept, cells] }, "\n");
}

function tableOf(text: string) {
	const { columns, rows } = readTable("", text, []);
	const names = columns.map((column) => column.trim().toLowerCase());
	const filled = rows.filter((cells) => cells.some((cell) => cell.trim() !== ""));
	return { columns: text.trim() === "" ? [] : names, rows: filled };
}

/** Tables of text, fitted to the width of the terminal. */
import { named, wrap } from "./wrap.js";

export interface Column {
	readonly title: string;
	readonly align?: "right";
}

const GAP = 2;
/** A column is not made narrower than this; where that does not fit, each row becomes a block of lines. */
const NARROWEST = 10;

/** Columns that are empty in every row are left out. */
export function table(
	columns: readonly Column[],
	rows: readonly (readonly string[])[],
	width: number,
): string {
	const used = columns.map((_, c) => rows.some((row) => row[c] !== ""));
	const kept = columns.filter((_, c) => used[c]);
	const cells = rows.map((row) => row.filter((_, c) => used[c]));
	const natural = kept.map((column, c) =>
		Math.max(column.title.length, ...cells.map((row) => row[c]!.length)),
	);
	const widths = fit(natural, width - GAP * (kept.length - 1));
	if (widths === undefined) return blocks(kept, cells, width);
	const titles = kept.map((column) => column.title);
	const rule = widths.map((w) => "-".repeat(w));
	return [titles, rule, ...cells].map((row) => line(row, widths, kept)).join("\n");
}

/**
 * Widths that together fill no more than `room`: the widest columns give way first.
 * Undefined where none would be wide enough to read.
 */
function fit(natural: readonly number[], room: number): number[] | undefined {
	const floor = (cap: number) => natural.reduce((sum, width) => sum + Math.min(width, cap), 0);
	let cap = Math.max(...natural, 0);
	while (floor(cap) > room) cap -= 1;
	if (cap < Math.min(NARROWEST, Math.max(...natural, 0))) return undefined;
	const widths = natural.map((width) => Math.min(width, cap));
	// What one step of the cap leaves over goes to the first column that was cut.
	const cut = widths.findIndex((width, c) => width < natural[c]!);
	if (cut >= 0) widths[cut]! += Math.min(room - floor(cap), natural[cut]! - widths[cut]!);
	return widths;
}

function line(row: readonly string[], widths: readonly number[], columns: readonly Column[]): string {
	const wrapped = row.map((cell, c) => wrap(cell, widths[c]!));
	const height = Math.max(...wrapped.map((lines) => lines.length));
	return Array.from({ length: height }, (_, at) =>
		wrapped
			.map((lines, c) => {
				const text = lines[at] ?? "";
				return columns[c]!.align === "right" ? text.padStart(widths[c]!) : text.padEnd(widths[c]!);
			})
			.join(" ".repeat(GAP))
			.trimEnd(),
	).join("\n");
}

function blocks(columns: readonly Column[], rows: readonly (readonly string[])[], width: number): string {
	const names = Math.max(...columns.map((column) => column.title.length));
	return rows
		.map((row) =>
			row
				.flatMap((cell, c) => (cell === "" ? [] : [named(columns[c]!.title, cell, width, 0, names)]))
				.join("\n"),
		)
		.join("\n\n");
}

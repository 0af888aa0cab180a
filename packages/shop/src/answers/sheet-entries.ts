/** What was read on the prove sheet, out of a table of rows and values (docs/json.md). */
import {
	openTable,
	type ProveSheet,
	readTable,
	type SheetEntry,
	type TableError,
	TableErrors,
} from "@loomwright/engine";
import { BadInput } from "./errors.js";

/** @throws BadInput for a row that the sheet has not */
export function checkSheetEntries(sheet: ProveSheet, entries: readonly SheetEntry[]): readonly SheetEntry[] {
	const known = new Set(sheet.parts.flatMap((part) => part.rows.map((row) => row.number)));
	for (const { row } of entries)
		if (!known.has(row)) throw new BadInput(`the sheet has no row ${row}`, `a row from 1 to ${known.size}`);
	return entries;
}

const SCHEMA = { row: "required", value: "required" } as const;

/** Ohms for each ending that a meter's display has. */
const ENDINGS: Readonly<Record<string, number>> = { "": 1, k: 1e3, m: 1e6 };

const NUMBER = /^(\d+\.?\d*|\.\d+)\s*(k|m)?\s*(?:ohm|Ω)?$/i;

/**
 * @param text columns `row` and `value`: ohms, with k or M if wanted, or `open`
 * @param file its name, for messages
 * A row that stands there again was read once more.
 * @throws TableErrors with every row that cannot be read or is not on the sheet
 */
export function parseSheetEntries(sheet: ProveSheet, text: string, file: string): SheetEntry[] {
	const errors: TableError[] = [];
	const { rows } = openTable(readTable(file, text, errors), SCHEMA, errors);
	const known = new Set(sheet.parts.flatMap((part) => part.rows.map((row) => row.number)));
	const entries = rows.flatMap((line): SheetEntry[] => {
		if (line.faulty) return [];
		const [number, value] = [Number(line.text("row")), shownOhms(line.text("value"))];
		if (!known.has(number))
			line.refuse("row", `the sheet has no row "${line.text("row")}"`, `a row from 1 to ${known.size}`);
		if (value === undefined)
			line.refuse(
				"value",
				`"${line.text("value")}" is no reading`,
				"ohms from 0 on, e.g. 12.4 or 4.7 k, or open",
			);
		return value === undefined ? [] : [{ row: number, value }];
	});
	if (errors.length > 0) throw new TableErrors(errors);
	return entries;
}

function shownOhms(text: string): SheetEntry["value"] | undefined {
	if (/^open$/i.test(text)) return "open";
	const found = NUMBER.exec(text.replace(",", "."));
	return found ? Number(found[1]) * ENDINGS[(found[2] ?? "").toLowerCase()]! : undefined;
}

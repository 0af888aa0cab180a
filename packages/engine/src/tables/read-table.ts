import type { TableError } from "./errors.js";
import { splitRecords } from "./records.js";

/** A table as cells of text, exactly as spelled. `rows[i]` is row i + 2 of a spreadsheet; empty rows are kept. */
export interface Table {
	readonly file: string;
	readonly columns: readonly string[];
	readonly rows: readonly (readonly string[])[];
}

/** In order of preference where a header has equally many of each. */
const DELIMITERS = [",", "\t", ";"] as const;

/**
 * Reads a table out of comma-separated text (RFC 4180), a tab-separated paste, or the
 * semicolon-separated form of spreadsheets that use a decimal comma; the header decides which.
 * A byte order mark and any line ending are accepted. Never throws: faults are appended to `errors`.
 */
export function readTable(file: string, text: string, errors: TableError[]): Table {
	const plain = text.startsWith("\ufeff") ? text.slice(1) : text;
	const delimiter = delimiterOf(plain);
	const { records, faults } = splitRecords(plain, delimiter, delimiter === "\t");
	const [columns = [], ...rows] = records;
	for (const { record, cell, problem, wanted } of faults) {
		errors.push({ file, row: record + 1, column: columns[cell]?.trim() ?? "", problem, wanted });
	}
	return { file, columns, rows };
}

/** The delimiter that stands most often in the header, outside quotes. */
function delimiterOf(text: string): string {
	const counts = new Map<string, number>(DELIMITERS.map((delimiter) => [delimiter, 0]));
	let inQuotes = false;
	for (const char of text) {
		if (char === '"') inQuotes = !inQuotes;
		else if (!inQuotes && (char === "\n" || char === "\r")) break;
		else if (!inQuotes && counts.has(char)) counts.set(char, counts.get(char)! + 1);
	}
	return DELIMITERS.reduce((best, next) => (counts.get(next)! > counts.get(best)! ? next : best));
}

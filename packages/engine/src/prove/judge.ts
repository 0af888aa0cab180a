/** What was read, held against the sheet, and handed on to finding. */
import { LEAST_OPEN } from "./detect.js";
import type { ProveSheet, SheetRow } from "./types.js";

/** What the meter showed for a row. */
export interface SheetEntry {
	/** Number of the row. */
	readonly row: number;
	/** Ohms; `"open"` where the meter showed open. */
	readonly value: number | "open";
}

export interface Verdict {
	readonly row: SheetRow;
	readonly value: number | "open";
	readonly passes: boolean;
	/** In a sentence. */
	readonly text: string;
}

/** Readings in the shape that finding takes (docs/evidence.md). */
export interface ReadEvidence {
	readonly title: string;
	readonly of: "converted";
	/** Until the sheet passes. */
	readonly battery: "off";
	readonly occasions: readonly {
		readonly note: string;
		readonly reseated: string;
		readonly codes: undefined;
		readonly units: readonly string[];
		readonly functions: Readonly<Record<string, boolean>>;
		readonly readings: readonly {
			readonly what: "ohms";
			readonly from: string;
			readonly to: string;
			readonly when: string;
			readonly value: number | "open";
		}[];
		readonly bench: Readonly<Record<string, boolean>>;
	}[];
}

/**
 * Passes or fails each entry, in the order given.
 * @throws RangeError for a row that the sheet does not have, or ohms that are no number from 0 on
 */
export function judge(sheet: ProveSheet, entries: readonly SheetEntry[]): Verdict[] {
	const rows = rowsOf(sheet);
	return entries.map((entry) => {
		const row = rowOf(rows, entry);
		const passes = inside(row, entry.value);
		return { row, value: entry.value, passes, text: textOf(row, entry.value, passes) };
	});
}

/**
 * The entries as evidence: one occasion for each part of the sheet that has any, and further ones for rows that were
 * read once more.
 * @throws RangeError as `judge`
 */
export function toEvidence(sheet: ProveSheet, entries: readonly SheetEntry[]): ReadEvidence {
	const rows = rowsOf(sheet);
	for (const entry of entries) rowOf(rows, entry);
	const occasions = roundsOf(entries).flatMap((round, k) =>
		sheet.parts.flatMap((part) => {
			const own = new Map(part.rows.map((row) => [row.number, row]));
			const readings = round.flatMap(({ row, value }) => {
				const found = own.get(row);
				if (found === undefined) return [];
				const { from, to, when } = found.question;
				return [{ what: "ohms", from, to, when, value } as const];
			});
			if (readings.length === 0) return [];
			const nothing = { reseated: "", codes: undefined, units: [], functions: {}, bench: {} };
			const note = `${k === 0 ? "prove sheet" : "read once more"}: ${part.title}`;
			return [{ note, ...nothing, readings }];
		}),
	);
	return { title: "Readings of the prove sheet", of: "converted", battery: "off", occasions };
}

/** The first readings of all rows, then the second ones of those that were read again, and so on. */
function roundsOf(entries: readonly SheetEntry[]): SheetEntry[][] {
	const times = new Map<number, number>();
	const rounds: SheetEntry[][] = [];
	for (const entry of entries) {
		const before = times.get(entry.row) ?? 0;
		times.set(entry.row, before + 1);
		const round = rounds[before];
		if (round) round.push(entry);
		else rounds.push([entry]);
	}
	return rounds;
}

function rowsOf(sheet: ProveSheet): Map<number, SheetRow> {
	return new Map(sheet.parts.flatMap((part) => part.rows).map((row) => [row.number, row]));
}

function rowOf(rows: ReadonlyMap<number, SheetRow>, { row, value }: SheetEntry): SheetRow {
	const found = rows.get(row);
	if (found === undefined) throw new RangeError(`no row ${row}; the sheet has rows 1 to ${rows.size}`);
	if (value !== "open" && !(value >= 0 && value < Number.POSITIVE_INFINITY))
		throw new RangeError(`row ${row}: '${value}' is no reading; ohms from 0 on, or open`);
	return found;
}

function inside({ value: sound, low, high }: SheetRow, value: number | "open"): boolean {
	const ohms = value === "open" ? Number.POSITIVE_INFINITY : value;
	if (sound === undefined) return ohms >= LEAST_OPEN;
	return ohms >= low && ohms <= high!;
}

function textOf(row: SheetRow, value: number | "open", passes: boolean): string {
	const shown = value === "open" ? "open" : `${ohmsText(value)} ohm`;
	const wanted = limitsText(row);
	return passes ? `${shown}: right (${wanted})` : `${shown}: not right, wanted ${wanted}`;
}

/** Pass limits in words: `0.1 to 0.4 ohm`, `open`. */
export function limitsText({ value, low, high }: Pick<SheetRow, "value" | "low" | "high">): string {
	if (value === undefined || high === undefined) return "open";
	return `${ohmsText(low)} to ${ohmsText(high)} ohm`;
}

function ohmsText(ohms: number): string {
	if (ohms < 10) return String(Number(ohms.toFixed(2)));
	return String(Number(ohms.toPrecision(3)));
}

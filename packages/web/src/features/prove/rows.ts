/** The sheet's rows with what was read for each, counted, and handed on to finding. */
import type { ProveSheet, SheetPart, SheetRow } from "@loomwright/engine";
import type { Entry, ReadingEntry } from "../../server/types.js";
import type { Act } from "../find/acts.js";
import { passes, type Shown } from "../meter/band.js";

/** What was done about a row: its reading, or why it was left out. */
export type Taken = { readonly value: Shown } | { readonly leftOut: string };

/** By row's key. */
export type AllTaken = Readonly<Record<string, Taken>>;

export type RowState = "unread" | "right" | "wrong" | "left out";

/** The question, so that a sheet computed anew keeps what was read where it asks the same. */
export const keyOf = ({ question: { from, to, when } }: SheetRow): string => `${from} ${to} ${when}`;

export const rowsOf = (sheet: ProveSheet): readonly SheetRow[] => sheet.parts.flatMap((part) => part.rows);

export function stateOf(row: SheetRow, taken: AllTaken): RowState {
	const own = taken[keyOf(row)];
	if (own === undefined) return "unread";
	if ("leftOut" in own) return "left out";
	return passes(row, own.value) ? "right" : "wrong";
}

export type Tally = Readonly<Record<RowState, number>>;

export function tallyOf(rows: readonly SheetRow[], taken: AllTaken): Tally {
	const tally = { unread: 0, right: 0, wrong: 0, "left out": 0 };
	for (const row of rows) tally[stateOf(row, taken)]++;
	return tally;
}

/** How many faults would have shown in the rows that are right. */
export function ruledOut(rows: readonly SheetRow[], taken: AllTaken): number {
	const right = rows.filter((row) => stateOf(row, taken) === "right");
	return new Set(right.flatMap((row) => row.catches)).size;
}

/** The next row to read after this number, from the start again behind the last; undefined where all are done. */
export function nextUnread(rows: readonly SheetRow[], taken: AllTaken, after: number): SheetRow | undefined {
	const unread = rows.filter((row) => stateOf(row, taken) === "unread");
	return unread.find(({ number }) => number > after) ?? unread[0];
}

/** What was read, as the finder takes it: one occasion for each part of the sheet. */
export function actsOfSheet(sheet: ProveSheet, taken: AllTaken): Act[] {
	return sheet.parts.flatMap((part) => {
		const readings = part.rows.flatMap((row): Act[] => {
			const own = taken[keyOf(row)];
			return own && "value" in own ? [{ kind: "reading", body: { ...row.question, value: own.value } }] : [];
		});
		return readings.length === 0 ? [] : [occasion(`prove sheet: ${part.title}`), ...readings];
	});
}

const occasion = (note: string): Act => ({ kind: "occasion", body: { note } });

/** The newest reading of each row in the job's history. */
export function takenInHistory(
	rows: readonly SheetRow[],
	entries: readonly Pick<Entry, "kind" | "body">[],
): AllTaken {
	const known = new Set(rows.map(keyOf));
	const readings = entries
		.filter(({ kind }) => kind === "reading")
		.map(({ body }) => body as ReadingEntry)
		.filter(({ what }) => what === "ohms")
		.map(({ from, to, when, value }) => [`${from} ${to} ${when}`, { value }] as const);
	return Object.fromEntries(readings.filter(([key]) => known.has(key)));
}

/** Is some plug off while this part is read? */
const plugsOff = ({ when }: SheetPart): boolean => when.includes("=unmated");

/** What brings the car from where it stands to this part: its own steps, and those of the first where they were not done. */
export function preparation(sheet: ProveSheet, part: SheetPart, standing: string): readonly string[] {
	const [first] = sheet.parts;
	const now = sheet.parts.find(({ when }) => when === standing);
	if (first === undefined || part === first) return part.prepare;
	// Only the last part says all by itself; the others go on from the first.
	const goesOn = plugsOff(part) || !sheet.parts.some(plugsOff);
	const there = now !== undefined && plugsOff(now) === plugsOff(part);
	return goesOn && !there ? [...first.prepare, ...part.prepare] : part.prepare;
}

/** What is different between two texts of one table, row by row. */
import { readTable } from "./read-table.js";

export interface CellDifference {
	readonly column: string;
	readonly was: string;
	readonly is: string;
}

export interface RowChange {
	readonly kind: "added" | "gone" | "changed";
	/** What stands in the first column; of a changed row, what stands there now. */
	readonly key: string;
	/** As a spreadsheet counts, the header being 1: in the later text, of a row that is gone in the earlier. */
	readonly row: number;
	/** Of the cells that are not as they were; of a row that came or went, all that are filled. */
	readonly cells: readonly CellDifference[];
}

interface Line {
	readonly row: number;
	readonly key: string;
	/** Filled cells by column. */
	readonly cells: ReadonlyMap<string, string>;
}

/**
 * Rows that came, went and changed, in the order of the later text. A row that stands elsewhere is the same row. One
 * that is the same but for its first column, as a step with another number, is a changed row, and so is one with the
 * same first column and half of its other cells. Cost O(cells).
 * @param before text of the table; undefined: there was none
 */
export function rowChanges(before: string | undefined, after: string | undefined): RowChange[] {
	const was = linesOf(before);
	const is = linesOf(after);
	const changes: RowChange[] = [];
	let left = { was: was.lines, is: is.lines };
	const whole = (line: Line) => JSON.stringify([line.key, bodyOf(line, [was.first, is.first])]);
	left = pair(left, whole, () => undefined);
	const tell = (old: Line, now: Line) => changes.push(changed(old, now));
	left = pair(left, (line) => JSON.stringify(bodyOf(line, [was.first, is.first])), tell);
	left = pair(left, keyOf, tell, alike);
	for (const { row, key, cells } of left.is)
		changes.push({
			...{ kind: "added", key, row },
			cells: [...cells].map(([column, text]) => ({ column, was: "", is: text })),
		});
	for (const { row, key, cells } of left.was)
		changes.push({
			...{ kind: "gone", key, row },
			cells: [...cells].map(([column, text]) => ({ column, was: text, is: "" })),
		});
	return changes.sort((one, other) => one.row - other.row);
}

const keyOf = (line: Line): string => line.key;

/** Filled cells but for the first column's, in order of column. */
const bodyOf = ({ cells }: Line, first: readonly string[]): [string, string][] =>
	[...cells].filter(([column]) => !first.includes(column)).sort(([a], [b]) => (a < b ? -1 : 1));

/** Half of the cells of the fuller one are the same in both. */
function alike(one: Line, other: Line): boolean {
	const same = [...one.cells].filter(([column, text]) => other.cells.get(column) === text).length;
	return 2 * same >= Math.max(one.cells.size, other.cells.size);
}

/** Takes out the rows that are the same in the given way, first with first, if they fit; tells each pair. */
function pair(
	{ was, is }: { was: readonly Line[]; is: readonly Line[] },
	by: (line: Line) => string,
	tell: (old: Line, now: Line) => void,
	fit: (old: Line, now: Line) => boolean = () => true,
): { was: readonly Line[]; is: readonly Line[] } {
	const waiting = new Map<string, Line[]>();
	for (const line of was) waiting.set(by(line), [...(waiting.get(by(line)) ?? []), line]);
	const found = new Set<Line>();
	for (const line of is) {
		const old = waiting.get(by(line))?.[0];
		if (old === undefined || !fit(old, line)) continue;
		waiting.get(by(line))?.shift();
		found.add(old).add(line);
		tell(old, line);
	}
	return { was: was.filter((line) => !found.has(line)), is: is.filter((line) => !found.has(line)) };
}

function changed(old: Line, now: Line): RowChange {
	const columns = new Set([...old.cells.keys(), ...now.cells.keys()]);
	const cells = [...columns].flatMap((column) => {
		const [was, is] = [old.cells.get(column) ?? "", now.cells.get(column) ?? ""];
		return was === is ? [] : [{ column, was, is }];
	});
	return { kind: "changed", key: now.key, row: now.row, cells };
}

/** Rows with anything in them. Faults of the text are no concern here: whoever reads it tells them. */
function linesOf(text: string | undefined): { first: string; lines: readonly Line[] } {
	const { columns, rows } = readTable("", text ?? "", []);
	const names = columns.map((column) => column.trim().toLowerCase());
	const lines = rows.flatMap((cells, at): Line[] => {
		const filled = cells.flatMap((cell, k): [string, string][] =>
			cell.trim() === "" ? [] : [[names[k] ?? "", cell.trim()]],
		);
		return filled.length === 0 ? [] : [{ row: at + 2, key: cells[0]?.trim() ?? "", cells: new Map(filled) }];
	});
	return { first: names[0] ?? "", lines };
}

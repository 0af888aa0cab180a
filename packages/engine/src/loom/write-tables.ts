import { formatSettings, writeTable } from "../tables/index.js";
import { formatColours, formatLength, formatSize } from "../units/index.js";
import { formatPositions } from "./positions.js";
import type { NewParts, RecipeStep, RecipeTable } from "./recipe-row.js";
import { REQUIRED_TABLES, SCHEMAS, type TableName } from "./schemas.js";
import type { Condition, Contact, FunctionNeed, Joint, Loom, Monitor, Part, Wire } from "./types.js";
import { formatWireEnd } from "./wire-end.js";

/** The cells of one row by column; a column left out is an empty cell. */
type Cells<Name extends TableName> = Partial<
	Record<keyof (typeof SCHEMAS)[Name], string | number | undefined>
>;

const NOTHING_NEW: NewParts = { parts: new Map(), contacts: new Map(), joints: new Map() };

/**
 * A loom written back as tables: text by file name, read again by `readTables` to the same data.
 * Tables with no rows are left out, but for the required ones. Sizes come as mm2 and lengths as metres.
 * Throws RangeError for a condition that sets nothing, which no table can hold.
 */
export function writeTables(
	loom: Loom,
	recipe: RecipeTable = [],
	newParts: NewParts = NOTHING_NEW,
): Readonly<Record<string, string>> {
	const files: Record<string, string> = {};
	const add = <Name extends TableName>(name: Name, rows: readonly Cells<Name>[]) => {
		if (rows.length === 0 && !REQUIRED_TABLES.includes(name)) return;
		const columns = Object.keys(SCHEMAS[name]) as (keyof (typeof SCHEMAS)[Name] & string)[];
		const cells = rows.map((row) => columns.map((column) => String(row[column] ?? "")));
		files[`${name}.csv`] = writeTable({ columns, rows: cells });
	};
	add("parts", [...loom.parts.values()].map(partCells));
	add("contacts", [...loom.contacts.values()].map(contactCells));
	add("wires", [...loom.wires.values()].map(wireCells));
	add("joints", [...loom.joints.values()].map(jointCells));
	add("conditions", [...loom.conditions.values()].flatMap(conditionCells));
	add("monitors", loom.monitors.map(monitorCells));
	add("functions", loom.functions.map(functionCells));
	add("recipe", recipe.map(stepCells));
	add("new-parts", [...newParts.parts.values()].map(partCells));
	add("new-contacts", [...newParts.contacts.values()].map(contactCells));
	add("new-joints", [...newParts.joints.values()].map(jointCells));
	return files;
}

function partCells(part: Part): Cells<"parts"> {
	const { id, values, positions, marks, reachMinutes, ...rest } = part;
	return {
		...rest,
		part: id,
		values: formatSettings(values),
		positions: formatPositions(positions),
		marks: marks.join("; "),
		reach: reachMinutes,
	};
}

function contactCells({ id, values, ...rest }: Contact): Cells<"contacts"> {
	return { ...rest, contact: id, values: formatSettings(values) };
}

function wireCells({ id, from, to, mm2, colours, metres, marks, ...rest }: Wire): Cells<"wires"> {
	return {
		...rest,
		wire: id,
		from: formatWireEnd(from),
		to: formatWireEnd(to),
		size: formatSize(mm2),
		colour: formatColours(colours),
		length: formatLength(metres),
		marks: marks.join("; "),
	};
}

function jointCells({ id, marks, ...rest }: Joint): Cells<"joints"> {
	return { ...rest, joint: id, marks: marks.join("; ") };
}

function conditionCells(condition: Condition): readonly Cells<"conditions">[] {
	const settings = [...condition.settings].map(([subject, state]) => ({ subject, state }));
	if (condition.like !== "") settings.unshift({ subject: "like", state: condition.like });
	if (settings.length === 0) throw new RangeError(`the condition "${condition.id}" sets nothing`);
	return settings.map((setting, at) => ({
		condition: condition.id,
		title: at === 0 ? condition.title : "",
		...setting,
	}));
}

function monitorCells({ ratio, ...rest }: Monitor): Cells<"monitors"> {
	return { ...rest, ratio: rest.twin === "" ? undefined : ratio };
}

function functionCells(need: FunctionNeed): Cells<"functions"> {
	return need;
}

function stepCells({ at, fresh, mm2, colours, metres, row: _, ...rest }: RecipeStep): Cells<"recipe"> {
	return {
		...rest,
		at: typeof at === "object" ? formatLength(at.metres) : at,
		new: fresh,
		size: mm2 === undefined ? "" : formatSize(mm2),
		colour: formatColours(colours),
		length: metres === undefined ? "" : formatLength(metres),
	};
}

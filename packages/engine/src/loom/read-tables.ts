import { didYouMean, nearestName, type TableError, TableErrors } from "../tables/index.js";
import type { Context } from "./context.js";
import type { LoomTables, Place, RowKind } from "./loom-tables.js";
import { Names } from "./names.js";
import { readConditions, settingKey } from "./read-conditions.js";
import { readContacts } from "./read-contacts.js";
import { readJoints } from "./read-joints.js";
import { readFunctions, readMonitors } from "./read-monitors.js";
import { readParts } from "./read-parts.js";
import { readRecipe } from "./read-recipe.js";
import { readWires } from "./read-wires.js";
import { SCHEMAS, type TableName } from "./schemas.js";

const TABLES = Object.keys(SCHEMAS) as TableName[];

/**
 * Reads the tables of a loom (docs/tables.md). `files` is each file's text by its name, which may have
 * a folder before it; files that are no table of a loom are passed over. Never throws: all errors of
 * all tables are in the result, and rows with errors are left out of its loom.
 */
export function readTables(files: Readonly<Record<string, string>>, name = ""): LoomTables {
	const errors: TableError[] = [];
	const names = new Names();
	const context: Context = { files: sortFiles(files, errors), errors, names, partKinds: new Map() };

	const parts = readParts(context, "parts");
	const contacts = readContacts(context, "contacts");
	const joints = readJoints(context, "joints");
	const wires = readWires(context);
	const newParts = {
		parts: readParts(context, "new-parts"),
		contacts: readContacts(context, "new-contacts"),
		joints: readJoints(context, "new-joints"),
	};
	const conditions = readConditions(context);
	const monitors = readMonitors(context);
	const functions = readFunctions(context);
	const recipe = readRecipe(context);

	const locate = (kind: RowKind, id: string | number, within = ""): Place | undefined => {
		if (kind === "monitor") return monitors.places[Number(id)];
		if (kind === "function") return functions.places[Number(id)];
		return names.find(kind, kind === "setting" ? settingKey(within, String(id)) : String(id));
	};
	return {
		delivered: {
			name,
			parts,
			contacts,
			wires,
			joints,
			conditions,
			monitors: monitors.items,
			functions: functions.items,
		},
		recipe,
		newParts,
		errors: sortErrors(errors, context),
		locate,
	};
}

/** As `readTables`, for where there is no going on with errors: throws TableErrors with all of them. */
export function readSoundTables(files: Readonly<Record<string, string>>, name = ""): LoomTables {
	const tables = readTables(files, name);
	if (tables.errors.length > 0) throw new TableErrors(tables.errors);
	return tables;
}

/** The given files by the table they are. Errors: two files for one table, and names that miss a table's by a letter or two. */
function sortFiles(files: Readonly<Record<string, string>>, errors: TableError[]): Context["files"] {
	const sorted = new Map<TableName, { file: string; text: string }>();
	for (const [file, text] of Object.entries(files)) {
		const base = /([^/\\]*)\.(csv|tsv|tab|txt)$/i.exec(file)?.[1]?.toLowerCase();
		if (base === undefined) continue;
		const table = TABLES.find((known) => known === base);
		const first = table && sorted.get(table);
		if (first) {
			const problem = `${first.file} is the same table`;
			errors.push({ file, row: 0, column: "", problem, wanted: `one file for ${table}` });
		} else if (table) {
			sorted.set(table, { file, text });
		} else if (nearestName(base, TABLES) !== undefined) {
			const wanted = didYouMean(base, TABLES, "one of the tables of a loom");
			errors.push({ file, row: 0, column: "", problem: "the file is no table of a loom", wanted });
		}
	}
	return sorted;
}

/** In the order of the tables, then of rows; whole files first. */
function sortErrors(errors: readonly TableError[], context: Context): readonly TableError[] {
	const order = new Map(TABLES.map((table, at) => [context.files.get(table)?.file ?? `${table}.csv`, at]));
	return errors.toSorted((a, b) => (order.get(a.file) ?? -1) - (order.get(b.file) ?? -1) || a.row - b.row);
}

import type { Schema } from "../tables/index.js";
import { openTable, type Row, readTable, type TableError } from "../tables/index.js";
import type { Place, RowKind } from "./loom-tables.js";
import { type Names, placeWords } from "./names.js";
import { REQUIRED_TABLES, SCHEMAS, type TableName } from "./schemas.js";

/** What the readers of the single tables share. */
export interface Context {
	/** The given files by table: name as given, and text. */
	readonly files: ReadonlyMap<TableName, { readonly file: string; readonly text: string }>;
	readonly errors: TableError[];
	readonly names: Names;
	/** Device kind of each part whose row was read, also if the row has other faults. */
	readonly partKinds: Map<string, string>;
}

type ColumnOf<Name extends TableName> = keyof (typeof SCHEMAS)[Name] & string;

/** The rows of a table; none if it was not given. `doubted` is the kind of name its rows give, if they give one. */
export function rowsOf<Name extends TableName>(
	context: Context,
	name: Name,
	doubted?: RowKind,
): readonly Row<ColumnOf<Name>>[] {
	const given = context.files.get(name);
	if (!given) {
		if (REQUIRED_TABLES.includes(name)) {
			const wanted = `a file ${name}.csv with at least the columns ${requiredColumns(name).join(", ")}`;
			context.errors.push({
				file: `${name}.csv`,
				row: 0,
				column: "",
				problem: "the table is missing",
				wanted,
			});
			if (doubted) context.names.doubt(doubted);
		}
		return [];
	}
	const table = readTable(given.file, given.text, context.errors);
	const open = openTable(table, SCHEMAS[name] as Schema as Schema<ColumnOf<Name>>, context.errors);
	if (doubted && !open.usable) context.names.doubt(doubted);
	return open.rows;
}

function requiredColumns(name: TableName): readonly string[] {
	return Object.entries(SCHEMAS[name])
		.filter(([, need]) => need === "required")
		.map(([column]) => column);
}

/** Enters the name a row gives; an error of the row where it is taken, which names the first. */
export function claim<Column extends string>(
	context: Context,
	row: Row<Column>,
	kind: RowKind,
	column: Column,
	kinds: readonly RowKind[] = [kind],
): void {
	const name = row.text(column);
	if (name === "") return;
	const place: Place = { file: row.file, row: row.row };
	const other = kinds.filter((k) => k !== kind).map((k) => context.names.find(k, name));
	const taken = other.find((p) => p !== undefined) ?? context.names.claim(kind, name, place);
	if (taken) row.refuse(column, `"${name}" is already the name in ${placeWords(taken)}`, "a name of its own");
}

/** An error of the row where a cell names what is not there. */
export function mustKnow<Column extends string>(
	context: Context,
	row: Row<Column>,
	column: Column,
	kinds: readonly RowKind[],
	wanted: string,
	name: string = row.text(column),
): void {
	if (name === "" || context.names.mayKnow(kinds, name)) return;
	row.refuse(column, `"${name}" is not known`, context.names.wanted(kinds, name, wanted));
}

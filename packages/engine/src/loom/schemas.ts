import type { Schema } from "../tables/index.js";

/** `"a* b c*"` as a schema: the columns in the order they are written, those with a star required. */
function schema<Columns extends string>(...columns: readonly Columns[]): Schema<Bare<Columns>> {
	return Object.fromEntries(
		columns.map((column) => [column.replace("*", ""), column.endsWith("*") ? "required" : "optional"]),
	) as Schema<Bare<Columns>>;
}

type Bare<Column extends string> = Column extends `${infer Name}*` ? Name : Column;

const PART_COLUMNS = schema(
	"part*",
	"kind*",
	"label",
	"place",
	"duty",
	"values",
	"positions",
	"marks",
	"reach",
	"note",
);

export const CONTACT_COLUMNS = schema(
	"contact*",
	"part*",
	"connector",
	"cavity",
	"role*",
	"values",
	"label",
	"note",
);

const WIRE_COLUMNS = schema(
	"wire*",
	"from*",
	"to*",
	"size*",
	"colour",
	"length*",
	"circuit",
	"pair",
	"bundle",
	"marks",
	"note",
);

const JOINT_COLUMNS = schema("joint*", "kind*", "label", "place", "metal", "ohms", "marks", "note");

const CONDITION_COLUMNS = schema("condition*", "title", "subject*", "state*");

const MONITOR_COLUMNS = schema(
	"code*",
	"unit*",
	"title",
	"measures",
	"contact*",
	"reference",
	"when*",
	"twin",
	"ratio",
	"below",
	"above",
	"of",
	"note",
);

const FUNCTION_COLUMNS = schema(
	"function*",
	"title",
	"when*",
	"measures",
	"contact*",
	"reference",
	"low",
	"high",
	"of",
);

export const RECIPE_COLUMNS = schema(
	"step*",
	"kind*",
	"title",
	"wire",
	"other",
	"at",
	"from",
	"to",
	"part",
	"new",
	"joint",
	"size",
	"colour",
	"length",
	"circuit",
	"pair",
	"bundle",
	"place",
	"minutes",
	"note",
);

/** Every table of a loom by its file name without ending, in the order in which they are read and reported. */
export const SCHEMAS = {
	parts: PART_COLUMNS,
	contacts: CONTACT_COLUMNS,
	joints: JOINT_COLUMNS,
	wires: WIRE_COLUMNS,
	"new-parts": PART_COLUMNS,
	"new-contacts": CONTACT_COLUMNS,
	"new-joints": JOINT_COLUMNS,
	conditions: CONDITION_COLUMNS,
	monitors: MONITOR_COLUMNS,
	functions: FUNCTION_COLUMNS,
	recipe: RECIPE_COLUMNS,
} as const;

export type TableName = keyof typeof SCHEMAS;

/** Without these there is no loom. */
export const REQUIRED_TABLES: readonly TableName[] = ["parts", "contacts", "wires"];

import type { Row } from "../tables/index.js";
import { parseNumber } from "../units/index.js";
import { type Context, mustKnow, rowsOf } from "./context.js";
import type { Place } from "./loom-tables.js";
import type { FunctionNeed, Monitor, Quantity } from "./types.js";

const CARS = ["", "delivered", "converted"] as const;

/** Rows that have no name: the rows and, in the same order, where each stands. */
export interface Placed<T> {
	readonly items: readonly T[];
	readonly places: readonly Place[];
}

/** Trouble codes out of `monitors.csv`. */
export function readMonitors(context: Context): Placed<Monitor> {
	const items: Monitor[] = [];
	const places: Place[] = [];
	for (const row of rowsOf(context, "monitors")) {
		mustKnow(context, row, "unit", ["part"], "a control unit of parts.csv or new-parts.csv");
		const quantity = readQuantity(context, row);
		const twin = row.text("twin");
		mustKnowContact(context, row, "twin");
		const ratio = row.read("ratio", parseNumber);
		if (ratio !== undefined && twin === "")
			row.refuse("ratio", "there is no twin to compare with", "a twin, or empty");
		const { low: below, high: above } = readWindow(row, "below", "above");
		const monitor: Monitor = {
			code: row.text("code"),
			unit: row.text("unit"),
			title: row.text("title"),
			...quantity,
			twin,
			ratio: ratio ?? 1,
			of: row.choice("of", CARS, ""),
			below,
			above,
			note: row.text("note"),
		};
		if (row.faulty) continue;
		items.push(monitor);
		places.push({ file: row.file, row: row.row });
	}
	return { items, places };
}

/** Needs of functions out of `functions.csv`. */
export function readFunctions(context: Context): Placed<FunctionNeed> {
	const items: FunctionNeed[] = [];
	const places: Place[] = [];
	for (const row of rowsOf(context, "functions")) {
		const need: FunctionNeed = {
			function: row.text("function"),
			title: row.text("title"),
			...readQuantity(context, row),
			...readWindow(row, "low", "high"),
			of: row.choice("of", CARS, ""),
		};
		if (row.faulty) continue;
		items.push(need);
		places.push({ file: row.file, row: row.row });
	}
	return { items, places };
}

type QuantityColumn = "measures" | "contact" | "reference" | "when";

function readQuantity(context: Context, row: Row<QuantityColumn>): Quantity & { readonly when: string } {
	mustKnowContact(context, row, "contact");
	mustKnowContact(context, row, "reference");
	mustKnow(context, row, "when", ["condition"], "a condition of conditions.csv");
	const measures = row.choice("measures", ["volts", "amps"], "volts");
	const reference = row.text("reference");
	if (measures === "amps" && reference === "") {
		row.refuse("reference", "a current needs a second contact", "the contact to which the current flows");
	}
	return { measures, contact: row.text("contact"), reference, when: row.text("when") };
}

/** A contact of the loom or of the new parts; `CONTACT!pin` is the part's own side of it. */
function mustKnowContact<Column extends string>(context: Context, row: Row<Column>, column: Column): void {
	const contact = row.text(column).replace(/!pin$/, "");
	mustKnow(context, row, column, ["contact"], "a contact of contacts.csv or new-contacts.csv", contact);
}

function readWindow<Low extends string, High extends string>(row: Row<Low | High>, low: Low, high: High) {
	const window = { low: row.read(low, parseNumber), high: row.read(high, parseNumber) };
	if (row.text(low) === "" && row.text(high) === "") {
		row.refuse(low, `neither ${low} nor ${high} is given`, `a number for one of them at least`);
	} else if (window.low !== undefined && window.high !== undefined && window.low > window.high) {
		row.refuse(low, `${low} is ${window.low} and ${high} only ${window.high}`, `${low} at most ${high}`);
	}
	return window;
}

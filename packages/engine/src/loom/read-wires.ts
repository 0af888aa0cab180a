import { bad, type Parsed, parseColours, parseLength, parseSize } from "../units/index.js";
import { type Context, claim, mustKnow, rowsOf } from "./context.js";
import { parseName } from "./names.js";
import type { Wire } from "./types.js";
import { parseWireEnd } from "./wire-end.js";
import { MARKS } from "./words.js";

/** Wires by name out of `wires.csv`. */
export function readWires(context: Context): ReadonlyMap<string, Wire> {
	const wires = new Map<string, Wire>();
	for (const row of rowsOf(context, "wires", "wire")) {
		const id = row.read("wire", parseName) ?? row.text("wire");
		claim(context, row, "wire", "wire");
		const from = parseWireEnd(row.text("from"));
		const to = parseWireEnd(row.text("to"));
		const wanted = "a contact, a joint, cut or stowed";
		if (from.at !== "loose") mustKnow(context, row, "from", ["contact", "joint"], wanted);
		if (to.at !== "loose") mustKnow(context, row, "to", ["contact", "joint"], wanted);
		if (from.at !== "loose" && row.text("from") === row.text("to")) {
			row.refuse("to", `both ends are at ${row.text("to")}`, "another contact or joint");
		}
		const mm2 = row.read("size", parseSize);
		const metres = row.read("length", parsePositiveLength);
		const colours = row.read("colour", parseColours) ?? [];
		const marks = row.list("marks", MARKS);
		if (row.faulty || mm2 === undefined || metres === undefined) continue;
		wires.set(id, {
			id,
			from,
			to,
			mm2,
			colours,
			metres,
			circuit: row.text("circuit"),
			pair: row.text("pair"),
			bundle: row.text("bundle"),
			marks,
			note: row.text("note"),
		});
	}
	return wires;
}

/** A length above zero: a wire of no length would have no resistance. */
export function parsePositiveLength(text: string): Parsed<number> {
	const parsed = parseLength(text);
	return parsed.ok && parsed.value === 0
		? bad(`"${text}" is no length`, "more than zero, e.g. 50 mm")
		: parsed;
}

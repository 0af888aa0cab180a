import { parseSettings } from "../tables/index.js";
import { type Context, claim, rowsOf } from "./context.js";
import { parseMinutes } from "./minutes.js";
import { parseName } from "./names.js";
import { parsePositions } from "./positions.js";
import type { Part } from "./types.js";
import { DUTIES, MARKS } from "./words.js";

/** Parts by name out of `parts.csv` or `new-parts.csv`. Kinds and their values are checked in the devices room. */
export function readParts(context: Context, table: "parts" | "new-parts"): ReadonlyMap<string, Part> {
	const parts = new Map<string, Part>();
	for (const row of rowsOf(context, table, "part")) {
		const id = row.read("part", parseName) ?? row.text("part");
		claim(context, row, "part", "part", ["part", "joint"]);
		const part: Part = {
			id,
			kind: row.text("kind"),
			label: row.text("label"),
			place: row.text("place"),
			duty: row.choice("duty", DUTIES, ""),
			values: row.read("values", parseSettings) ?? {},
			positions: row.read("positions", parsePositions) ?? [],
			marks: row.list("marks", MARKS),
			reachMinutes: row.read("reach", parseMinutes),
			note: row.text("note"),
		};
		if (!context.partKinds.has(id)) context.partKinds.set(id, part.kind);
		if (!row.faulty) parts.set(id, part);
	}
	return parts;
}

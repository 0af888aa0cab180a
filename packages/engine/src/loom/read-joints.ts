import { bad, type Parsed, parseNumber } from "../units/index.js";
import { type Context, claim, rowsOf } from "./context.js";
import { parseName } from "./names.js";
import type { Joint } from "./types.js";
import { MARKS } from "./words.js";

const KINDS: readonly Joint["kind"][] = ["splice", "ground", "bar"];
const METALS: readonly string[] = ["body", "engine"];

/** Joints by name out of `joints.csv` or `new-joints.csv`. */
export function readJoints(context: Context, table: "joints" | "new-joints"): ReadonlyMap<string, Joint> {
	const joints = new Map<string, Joint>();
	for (const row of rowsOf(context, table, "joint")) {
		const id = row.read("joint", parseName) ?? row.text("joint");
		claim(context, row, "joint", "joint", ["part", "joint"]);
		const kind = row.choice("kind", KINDS, "splice");
		const metal = row.choice("metal", METALS, kind === "ground" ? "body" : "");
		if (metal !== "" && kind !== "ground" && !row.faulty) {
			row.refuse("metal", `a ${kind} is bolted to no metal`, "empty, or the kind ground");
		}
		const joint: Joint = {
			id,
			kind,
			label: row.text("label"),
			place: row.text("place"),
			ohms: row.read("ohms", parsePositive),
			metal,
			marks: row.list("marks", MARKS),
			note: row.text("note"),
		};
		if (!row.faulty) joints.set(id, joint);
	}
	return joints;
}

function parsePositive(text: string): Parsed<number> {
	const parsed = parseNumber(text);
	return parsed.ok && parsed.value <= 0
		? bad(`"${text}" is not above zero`, "ohms above zero, e.g. 0.001")
		: parsed;
}

import {
	type Contact,
	EMPTY_CELLS,
	type Joint,
	type Loom,
	type NewParts,
	type Part,
	type RecipeStep,
	type Wire,
	type WireEnd,
} from "../loom/index.js";
import { type Applied, applyRecipe } from "./apply.js";
import type { StepKind } from "./step-definition.js";

/** An end as the tables write it: a contact has a dot in its name. */
export function end(place: string): WireEnd {
	if (place === "cut") return { at: "loose", insulated: false };
	if (place === "stowed") return { at: "loose", insulated: true };
	return place.includes(".") ? { at: "contact", contact: place } : { at: "joint", joint: place };
}

export const part = (id: string, kind: string): Part => ({
	id,
	kind,
	label: "",
	place: "",
	duty: "",
	values: {},
	positions: [],
	marks: [],
	note: "",
});

export const contact = (id: string, connector = "", cavity = ""): Contact => ({
	id,
	part: id.slice(0, id.indexOf(".")),
	connector,
	cavity,
	role: "any",
	values: {},
	label: "",
	note: "",
});

export const wire = (id: string, from: string, to: string, more: Partial<Wire> = {}): Wire => ({
	id,
	from: end(from),
	to: end(to),
	mm2: 0.75,
	colours: ["BK", "WH"],
	metres: 2,
	circuit: "",
	pair: "",
	bundle: "",
	marks: [],
	note: "",
	...more,
});

export const joint = (id: string, kind: Joint["kind"] = "splice"): Joint => ({
	id,
	kind,
	label: "",
	place: "",
	ohms: undefined,
	metal: kind === "ground" ? "body" : "",
	marks: [],
	note: "",
});

const byId = <T extends { readonly id: string }>(rows: readonly T[]) =>
	new Map(rows.map((row) => [row.id, row]));

interface Rows {
	readonly parts?: readonly Part[];
	readonly contacts?: readonly Contact[];
	readonly wires?: readonly Wire[];
	readonly joints?: readonly Joint[];
}

export const makeLoom = (rows: Rows): Loom => ({
	name: "bench",
	parts: byId(rows.parts ?? []),
	contacts: byId(rows.contacts ?? []),
	wires: byId(rows.wires ?? []),
	joints: byId(rows.joints ?? []),
	conditions: new Map(),
	monitors: [],
	functions: [],
});

/** An engine unit in connector C1, a gearbox unit in C2, a relay, a battery with studs, a splice and a ground. */
export const bench: Loom = makeLoom({
	parts: [
		part("E1", "control unit"),
		part("T1", "control unit"),
		part("C1", "connector"),
		part("C2", "connector"),
		part("K1", "relay"),
		part("BAT", "battery"),
	],
	contacts: [
		contact("E1.1", "C1", "1"),
		contact("E1.2", "C1", "2"),
		contact("E1.3", "C1", "3"),
		contact("E1.10", "C1", "10"),
		contact("T1.1", "C2", "1"),
		contact("T1.2", "C2", "2"),
		contact("K1.85"),
		contact("K1.86"),
		contact("BAT.+"),
		contact("BAT.-"),
	],
	joints: [joint("S1"), joint("G1", "ground")],
	wires: [
		wire("W1", "E1.1", "T1.1", { circuit: "signal", pair: "P1", bundle: "dash", marks: ["wet"] }),
		wire("W2", "E1.2", "S1"),
		wire("W3", "S1", "T1.2"),
		wire("W4", "S1", "K1.85", { mm2: 0.5 }),
		wire("W5", "BAT.-", "G1", { mm2: 16, colours: [] }),
		wire("W6", "BAT.+", "cut", { mm2: 4, colours: ["RD"] }),
		wire("W7", "cut", "stowed"),
	],
});

/** A clutch switch S9 in connector C9, and a ground point G9. */
export const newParts: NewParts = {
	parts: byId([part("S9", "switch"), part("C9", "connector")]),
	contacts: byId([contact("S9.a", "C9", "1"), contact("S9.b", "C9", "2")]),
	joints: byId([joint("G9", "ground")]),
};

export const step = (kind: StepKind, cells: Partial<RecipeStep> = {}): RecipeStep => ({
	...EMPTY_CELLS,
	step: "1",
	title: "",
	row: 2,
	...cells,
	kind,
});

/** Steps named 1, 2, 3 ... in their order, where they have no names of their own. */
export const recipe = (...steps: RecipeStep[]): RecipeStep[] =>
	steps.map((row, i) => ({ ...row, step: row.step === "1" ? `${i + 1}` : row.step, row: i + 2 }));

/** The bench loom after these steps. */
export const after = (...steps: RecipeStep[]): Applied => applyRecipe(bench, recipe(...steps), newParts);

/** What a step that should not fit says, and whether the loom stayed as it was. */
export function refused(...steps: RecipeStep[]): string[] {
	const before = after(...steps.slice(0, -1));
	const { loom, misfits, touched } = after(...steps);
	if (JSON.stringify(tables(loom)) !== JSON.stringify(tables(before.loom)))
		throw new Error("the loom changed");
	if (JSON.stringify(lists(touched)) !== JSON.stringify(lists(before.touched)))
		throw new Error("touches stayed");
	return misfits.map((found) => found.text);
}

export const tables = ({ parts, contacts, wires, joints }: Loom) =>
	[parts, contacts, wires, joints].map((table) => [...table]);

const lists = (touched: Applied["touched"]) => Object.values(touched).map((map) => [...map]);

/** `from -> to` of a wire, as the tables write it. */
export function run(loom: Loom, id: string): string {
	const found = loom.wires.get(id);
	if (!found) return "none";
	const text = (at: WireEnd) =>
		at.at === "contact" ? at.contact : at.at === "joint" ? at.joint : at.insulated ? "stowed" : "cut";
	return `${text(found.from)} -> ${text(found.to)}`;
}

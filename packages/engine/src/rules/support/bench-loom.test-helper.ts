/** Tiny looms for the tests of rules: rows in a few words, as the tables would give them. */
import { Circuit } from "../../circuit/index.js";
import { checkDevices } from "../../devices/index.js";
import type { Condition, Contact, Joint, Loom, Part, Position, Wire, WireEnd } from "../../loom/index.js";
import { parsePositions } from "../../loom/positions.js";

export interface PartRow {
	readonly part: Part;
	readonly contacts: readonly Contact[];
}

interface PartMore {
	readonly values?: Record<string, number>;
	readonly duty?: string;
	/** As in the table: `off:; run:30-15`. */
	readonly positions?: string;
	readonly marks?: readonly string[];
	readonly place?: string;
	readonly label?: string;
	readonly connector?: string;
}

/** A part whose contacts are named like their roles. */
export function part(id: string, kind: string, roles: readonly string[], more: PartMore = {}): PartRow {
	return unit(id, kind, Object.fromEntries(roles.map((role) => [role.replaceAll(" ", "_"), role])), more);
}

/** A part with pins by name: `{ A1: "supply", A2: "ground" }`; values of a pin after a bar: `"low-side|limit_amps=1"`. */
export function unit(
	id: string,
	kind: string,
	pins: Readonly<Record<string, string>>,
	more: PartMore = {},
): PartRow {
	const contacts = Object.entries(pins).map(([name, text]): Contact => {
		const [role = "", values = ""] = text.split("|");
		return {
			id: `${id}.${name}`,
			part: id,
			connector: more.connector ?? "",
			cavity: more.connector ? name : "",
			role,
			values: Object.fromEntries(
				values
					.split(";")
					.filter(Boolean)
					.map((pair) => [pair.split("=")[0]!, Number(pair.split("=")[1])]),
			),
			label: "",
			note: "",
		};
	});
	return {
		part: {
			id,
			kind,
			label: more.label ?? "",
			place: more.place ?? "",
			duty: more.duty ?? "",
			values: more.values ?? {},
			positions: positionsOf(more.positions),
			marks: more.marks ?? [],
			note: "",
		},
		contacts,
	};
}

function positionsOf(text: string | undefined): readonly Position[] {
	if (text === undefined) return [];
	const read = parsePositions(text);
	if (!read.ok) throw new Error(JSON.stringify(read));
	return read.value;
}

export const battery = part("BAT", "battery", ["+", "-"]);
export const connector = (id: string, place = "") => unit(id, "connector", {}, { place });

function end(place: string): WireEnd {
	if (place === "cut") return { at: "loose", insulated: false };
	if (place === "stowed") return { at: "loose", insulated: true };
	return place.includes(".") ? { at: "contact", contact: place } : { at: "joint", joint: place };
}

/** `wire("W1", "BAT.+ > F1.in", 2.5, 1)`: size in mm2, length in metres. */
export function wire(id: string, run: string, mm2 = 1, metres = 1, more: Partial<Wire> = {}): Wire {
	const [from = "", to = ""] = run.split(" > ");
	return {
		id,
		from: end(from),
		to: end(to),
		mm2,
		metres,
		colours: [],
		circuit: "",
		pair: "",
		bundle: "",
		marks: [],
		note: "",
		...more,
	};
}

export function joint(id: string, kind: Joint["kind"] = "splice", more: Partial<Joint> = {}): Joint {
	const metal = kind === "ground" ? "body" : "";
	return { id, kind, label: "", place: "", ohms: undefined, metal, marks: [], note: "", ...more };
}

/** Battery minus on the body by a heavy cable: `...grounded`. */
export const grounded = [wire("W-", "BAT.- > G1", 25, 0.3)] as const;

export interface Rows {
	readonly parts: readonly PartRow[];
	readonly wires: readonly Wire[];
	readonly joints?: readonly Joint[];
	/** Condition to settings: `{ run: { KEY: "run" } }`. */
	readonly conditions?: Readonly<Record<string, Readonly<Record<string, string>>>>;
}

export function benchLoom(rows: Rows): Loom {
	const conditions = Object.entries(rows.conditions ?? { rest: {} }).map(
		([id, settings]): [string, Condition] => [
			id,
			{ id, title: "", like: "", settings: new Map(Object.entries(settings)) },
		],
	);
	return {
		name: "bench",
		parts: new Map(rows.parts.map((row) => [row.part.id, row.part])),
		contacts: new Map(rows.parts.flatMap((row) => row.contacts.map((c) => [c.id, c]))),
		wires: new Map(rows.wires.map((row) => [row.id, row])),
		joints: new Map((rows.joints ?? [joint("G1", "ground")]).map((row) => [row.id, row])),
		conditions: new Map(conditions),
		monitors: [],
		functions: [],
	};
}

/** @throws Error when the rows would not pass the tables' own checks of ends, roles and settings */
export function benchCircuit(rows: Rows): Circuit {
	const loom = benchLoom(rows);
	for (const { id, from, to } of loom.wires.values())
		for (const at of [from, to]) {
			if (at.at === "contact" && !loom.contacts.has(at.contact)) throw new Error(`${id}: no ${at.contact}`);
			if (at.at === "joint" && !loom.joints.has(at.joint)) throw new Error(`${id}: no joint ${at.joint}`);
		}
	const none = { parts: new Map(), contacts: new Map(), joints: new Map() };
	const faults = checkDevices({
		delivered: loom,
		newParts: none,
		recipe: [],
		errors: [],
		locate: () => undefined,
	} as unknown as Parameters<typeof checkDevices>[0]);
	if (faults.length > 0) throw new Error(faults.map((f) => `${f.problem}; ${f.wanted}`).join("\n"));
	return new Circuit(loom);
}

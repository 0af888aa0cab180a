/** Points a meter lead can be put to, with the words they are searched by. */
import type { Loom } from "@loomwright/engine";

export interface Point {
	/** Contact or joint id, or `body`. */
	readonly id: string;
	/** Connector, else part: what one looks under. */
	readonly home: string;
	readonly text: string;
	/** Colours of the wire there; of the first, where several are. */
	readonly colours: readonly string[];
}

export const BODY: Point = { id: "body", home: "", text: "body metal", colours: [] };

const known = new WeakMap<Loom, readonly Point[]>();

/** Every contact, joint and the body, in the order of the tables. */
export function pointsOf(loom: Loom): readonly Point[] {
	let points = known.get(loom);
	if (points === undefined) {
		points = collect(loom);
		known.set(loom, points);
	}
	return points;
}

function collect(loom: Loom): Point[] {
	const colours = new Map<string, readonly string[]>();
	for (const wire of loom.wires.values())
		for (const end of [wire.from, wire.to]) {
			const name = end.at === "contact" ? end.contact : end.at === "joint" ? end.joint : "";
			if (name !== "" && !colours.has(name)) colours.set(name, wire.colours);
		}
	const contacts = [...loom.contacts.values()].map((contact): Point => {
		const part = loom.parts.get(contact.part);
		const seat = contact.connector === "" ? "" : `${contact.connector} cavity ${contact.cavity}`;
		const text = [seat, part?.label ?? "", contact.label, contact.label === "" ? contact.role : ""];
		return {
			id: contact.id,
			home: contact.connector || contact.part,
			text: text.filter(Boolean).join(", "),
			colours: colours.get(contact.id) ?? [],
		};
	});
	const joints = [...loom.joints.values()].map(({ id, kind, label, place }): Point => {
		const text = [kind === "ground" ? "ground point" : kind, label, place].filter(Boolean).join(", ");
		return {
			id,
			home: kind === "ground" ? "ground points" : "splices and bars",
			text,
			colours: colours.get(id) ?? [],
		};
	});
	return [
		BODY,
		...joints.filter(({ home }) => home === "ground points"),
		...contacts,
		...joints.filter(({ home }) => home !== "ground points"),
	];
}

/** Points that have every word of the text in their name or description, and are under that home. */
export function searchPoints(points: readonly Point[], text: string, home: string): Point[] {
	const words = text.toLowerCase().split(/\s+/).filter(Boolean);
	return points.filter((point) => {
		if (home !== "" && point.home !== home) return false;
		const all = `${point.id} ${point.text} ${point.colours.join("")}`.toLowerCase();
		return words.every((word) => all.includes(word));
	});
}

export const homesOf = (points: readonly Point[]): string[] =>
	[...new Set(points.map(({ home }) => home))].filter(Boolean);

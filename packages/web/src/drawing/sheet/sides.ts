/** On which side of its part a contact is drawn, where the part's kind decides it: supply comes from above, ground lies below. */
import type { Contact, Loom } from "@loomwright/engine";
import { indexOf, nameOf } from "./loom-index.js";
import type { Side } from "./types.js";

/** Control-unit pins to which current comes down from above; the others feed, or look, downwards. */
const UNIT_NORTH = new Set(["supply", "wake", "low-side"]);

const SENSORS = new Set([
	"thermistor",
	"potentiometer",
	"ratio sensor",
	"position sensor",
	"hall sensor",
	"coil sensor",
	"lambda sensor",
]);

const SOURCES = new Set(["battery", "generator"]);

/** The side by the kind alone; undefined where the heights on both sides of the part decide. */
export function sideByKind(loom: Loom, contact: Contact): Side | undefined {
	const kind = loom.parts.get(contact.part)?.kind ?? "";
	if (kind === "control unit") return UNIT_NORTH.has(contact.role) ? "north" : "south";
	if (SOURCES.has(kind)) return "south";
	if (SENSORS.has(kind)) return leadsTo(loom, contact.id, "control unit") ? "north" : undefined;
	return undefined;
}

/** True where wires, splices and connectors lead from the contact to a part of that kind. */
function leadsTo(loom: Loom, start: string, kind: string): boolean {
	const { wiresAt, otherHalf } = indexOf(loom);
	const seen = new Set([start]);
	const open = [start];
	for (let at = open.pop(); at !== undefined; at = open.pop()) {
		const part = loom.contacts.get(at)?.part;
		if (at !== start && part !== undefined && loom.parts.get(part)?.kind === kind) return true;
		const through = at === start || loom.joints.get(at)?.kind === "splice" || otherHalf.has(at);
		if (!through) continue;
		const ends = (wiresAt.get(at) ?? []).flatMap((wire) => [nameOf(wire.from), nameOf(wire.to)]);
		for (const next of [...ends, otherHalf.get(at) ?? ""]) {
			if (next === "" || seen.has(next)) continue;
			seen.add(next);
			open.push(next);
		}
	}
	return false;
}

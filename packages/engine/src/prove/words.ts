/** A point of a reading in words, and what to mind there. */
import { contactWords, placeOf } from "../faults/index.js";
import type { Loom } from "../loom/index.js";
import { cautionsOf } from "../rules/support/cautions.js";

/** @param unmated connectors that are off while the reading is taken */
export function pointWords(loom: Loom, id: string, unmated: ReadonlySet<string>): string {
	const contact = loom.contacts.get(id);
	const how = contact && unmated.has(contact.connector) ? ", in the loose plug" : "";
	return `${contactWords(loom, id)}${how}`;
}

/** Connector, or part where there is none, then the contact: neighbours come together. */
export function sortKey(loom: Loom, id: string): string {
	const contact = loom.contacts.get(id);
	return contact ? `${contact.connector || contact.part} ${id}` : id;
}

/** What to mind at two points while the battery is off. */
export function deadCautions(loom: Loom, points: readonly string[]): string[] {
	const places = new Set(points.map((id) => placeOf(loom, id)).filter(Boolean));
	const near = [...loom.parts.values()].filter(
		(part) => part.marks.includes("pyrotechnic") && places.has(part.place),
	);
	const cautions = cautionsOf(loom, points).filter((text) => text.startsWith("Fuel"));
	if (near.length > 0)
		cautions.unshift(
			`Restraint parts sit here (${near.map((part) => part.id).join(", ")}): do not touch their plugs or leads.`,
		);
	return cautions;
}

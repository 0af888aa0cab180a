import type { Contact, Part } from "./types.js";

/** Something wrong with how contacts sit in their housings. */
export interface CavityFault {
	readonly contact: Contact;
	readonly problem: string;
	readonly wanted: string;
}

/**
 * Holds that a cavity has one contact only, and that of an in-line connector one `a` and one `b`.
 * `kinds` gives the device kind of a part. Works on any loom, also one changed by a recipe.
 */
export function cavityFaults(
	contacts: Iterable<Contact>,
	kinds: ReadonlyMap<Part["id"], Part["kind"]>,
): readonly CavityFault[] {
	const faults: CavityFault[] = [];
	const seats = new Map<string, Contact>();
	const halves: { contact: Contact; mate: string }[] = [];
	for (const contact of contacts) {
		const inLine = kinds.get(contact.part) === "connector";
		const housing = inLine ? contact.part : contact.connector;
		if (housing === "" || contact.cavity === "") continue;
		const half = inLine ? contact.role : "";
		const seat = JSON.stringify([housing, contact.cavity, half]);
		const taken = seats.get(seat);
		if (taken) {
			const side = half === "" ? "" : `, half ${half},`;
			faults.push({
				contact,
				problem: `cavity ${contact.cavity} of ${housing}${side} already holds ${taken.id}`,
				wanted: "a cavity of its own",
			});
			continue;
		}
		seats.set(seat, contact);
		const other = half === "a" ? "b" : half === "b" ? "a" : undefined;
		if (other) halves.push({ contact, mate: JSON.stringify([housing, contact.cavity, other]) });
	}
	for (const { contact, mate } of halves) {
		if (seats.has(mate)) continue;
		faults.push({
			contact,
			problem: `cavity ${contact.cavity} of ${contact.part} has no contact on the other half`,
			wanted: `a contact with the same cavity and role ${contact.role === "a" ? "b" : "a"}`,
		});
	}
	return faults;
}

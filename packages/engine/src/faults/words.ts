/** Words for places and contacts, as a technician says them. */
import type { Loom, Part, WireEnd } from "../loom/index.js";

/** `ECU.A12 (connector X-ECUA, cavity 12)`. */
export function contactWords(loom: Loom, id: string): string {
	const contact = loom.contacts.get(id);
	if (contact === undefined) return id;
	const label = contact.label ? ` ${contact.label}` : "";
	return contact.connector
		? `${id}${label} (connector ${contact.connector}, cavity ${contact.cavity})`
		: `${id}${label}`;
}

export function endWords(loom: Loom, end: WireEnd): string {
	if (end.at === "contact") return contactWords(loom, end.contact);
	if (end.at === "joint") return partWords(loom, end.joint);
	return end.insulated ? "a stowed end" : "a cut end";
}

export function wireWords(loom: Loom, id: string): string {
	const wire = loom.wires.get(id);
	if (wire === undefined) return `wire ${id}`;
	const colour = wire.colours.length > 0 ? ` ${wire.colours.join("")}` : "";
	return `wire ${id}${colour} from ${endWords(loom, wire.from)} to ${endWords(loom, wire.to)}`;
}

export function partWords(loom: Loom, id: string): string {
	const label = loom.parts.get(id)?.label ?? loom.joints.get(id)?.label ?? "";
	return label ? `${label} (${id})` : id;
}

/** The connector or part that must be got at for a contact; a part itself. */
export function holderOf(loom: Loom, id: string): Part | undefined {
	const contact = loom.contacts.get(id);
	return loom.parts.get(contact?.connector || contact?.part || id);
}

export function placeOf(loom: Loom, id: string): string {
	return holderOf(loom, id)?.place ?? loom.joints.get(id)?.place ?? "";
}

/** Both ends of a wire and the wire, for a path. */
export function wirePath(loom: Loom, id: string): string[] {
	const wire = loom.wires.get(id);
	if (wire === undefined) return [id];
	const name = (end: WireEnd) =>
		end.at === "contact" ? [end.contact] : end.at === "joint" ? [end.joint] : [];
	return [...name(wire.from), id, ...name(wire.to)];
}

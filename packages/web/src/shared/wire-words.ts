/** Wires and their ends in words. */
import { colourWords, type Loom, type WireEnd } from "@loomwright/engine";

export const colourNames = (colours: readonly string[]): string =>
	colours.length === 0 ? "not known" : colourWords(colours);

export const lengthWords = (metres: number): string =>
	metres < 1 ? `${Math.round(metres * 1000)} mm` : `${metres.toFixed(2).replace(/\.?0+$/, "")} m`;

/** `ECU.A12, cavity 12 of X-ECU (engine unit)`. */
export function endWords(loom: Loom, end: WireEnd): string {
	if (end.at === "loose") return end.insulated ? "loose end, isolated and stowed" : "bare end";
	return end.at === "contact" ? contactWords(loom, end.contact) : jointWords(loom, end.joint);
}

export function contactWords(loom: Loom, id: string): string {
	const contact = loom.contacts.get(id);
	const part = contact && loom.parts.get(contact.part);
	if (!contact || !part) return id;
	const seat = contact.connector === "" ? "" : `, ${contact.connector} cavity ${contact.cavity}`;
	const label = contact.label || part.label;
	return `${id}${seat}${label === "" ? "" : ` (${label})`}`;
}

export function jointWords(loom: Loom, id: string): string {
	const joint = loom.joints.get(id);
	if (!joint) return id;
	const what = joint.kind === "ground" ? "ground point" : joint.kind;
	const label = joint.label || joint.place;
	return `${what} ${id}${label === "" ? "" : ` (${label})`}`;
}

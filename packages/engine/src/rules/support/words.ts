/** Places of a loom in words a technician can walk to. */
import { housingOf, type Loom } from "../../loom/index.js";

/** `ECU.A12 coolant signal (connector C1, cavity A12, engine bay)`. */
export function contactText(loom: Loom, id: string): string {
	const contact = loom.contacts.get(id);
	if (contact === undefined) return loom.joints.has(id) ? jointText(loom, id) : id;
	const housing = housingOf(loom, contact);
	const place = loom.parts.get(housing)?.place || loom.parts.get(contact.part)?.place || "";
	const facts = [housing && `connector ${housing}`, contact.cavity && `cavity ${contact.cavity}`, place];
	return named(id, contact.label, facts);
}

/** `M1 cooling fan (front)`. */
export function partText(loom: Loom, id: string): string {
	const part = loom.parts.get(id);
	return part === undefined ? id : named(id, part.label, [part.place]);
}

export function jointText(loom: Loom, id: string): string {
	const joint = loom.joints.get(id);
	return joint === undefined ? id : named(`${joint.kind} ${id}`, joint.label, [joint.place]);
}

/** `wire W12 (0.75 mm2, BKWH)`. */
export function wireText(loom: Loom, id: string): string {
	const wire = loom.wires.get(id);
	if (wire === undefined) return `wire ${id}`;
	return named(`wire ${id}`, "", [`${wire.mm2} mm2`, wire.colours.join("")]);
}

function named(id: string, label: string, facts: readonly string[]): string {
	const known = facts.filter((fact) => fact !== "").join(", ");
	return `${id}${label ? ` ${label}` : ""}${known ? ` (${known})` : ""}`;
}

/** `A, B and C`. */
export function list(words: readonly string[]): string {
	return words.length < 2 ? (words[0] ?? "") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;
}

/** A quantity to three digits: `0.235 V`, `12.6 V`, `48 300 ohm` is written `48300 ohm`. */
export function amount(value: number, unit: string): string {
	const digits = Math.abs(value) >= 100 ? value.toFixed(0) : String(Number(value.toPrecision(3)));
	return `${digits} ${unit}`;
}

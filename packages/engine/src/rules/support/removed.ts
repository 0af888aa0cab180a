/** Parts taken out on which something that stayed depended. */
import type { Circuit } from "../../circuit/index.js";
import { namesAlong } from "./ways.js";
import { type Compared, carriedBy } from "./worked.js";

/** The removed parts through which a load's current came or went as delivered, in order. */
export function removedOn(circuit: Circuit, before: Circuit, lost: Compared): string[] {
	const owners = carriedBy(lost, (branches) => namesAlong(before, branches)).flatMap((name) => {
		const contact = before.loom.contacts.get(name);
		return contact ? [contact.connector, contact.part] : before.loom.parts.has(name) ? [name] : [];
	});
	return [...new Set(owners)].filter((part) => part !== "" && !circuit.loom.parts.has(part));
}

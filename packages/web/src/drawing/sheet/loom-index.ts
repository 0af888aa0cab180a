/** Which wires end where, and a part's contacts; collected once per loom. */
import type { Contact, Loom, Wire, WireEnd } from "@loomwright/engine";

export interface LoomIndex {
	/** Wires by the contact or joint they end at. */
	readonly wiresAt: ReadonlyMap<string, readonly Wire[]>;
	readonly contactsOf: ReadonlyMap<string, readonly Contact[]>;
	/** The other half of an in-line connector's contact. */
	readonly otherHalf: ReadonlyMap<string, string>;
}

const known = new WeakMap<Loom, LoomIndex>();

export function indexOf(loom: Loom): LoomIndex {
	let index = known.get(loom);
	if (index === undefined) {
		index = collect(loom);
		known.set(loom, index);
	}
	return index;
}

/** Contact or joint at a wire's end; empty for a loose end. Contacts have a dot in their name, joints none. */
export function nameOf(end: WireEnd): string {
	return end.at === "contact" ? end.contact : end.at === "joint" ? end.joint : "";
}

export const isInLine = (loom: Loom, contact: Contact): boolean =>
	loom.parts.get(contact.part)?.kind === "connector";

function collect(loom: Loom): LoomIndex {
	const wiresAt = new Map<string, Wire[]>();
	const contactsOf = new Map<string, Contact[]>();
	const halves = new Map<string, string[]>();
	for (const wire of loom.wires.values())
		for (const name of new Set([nameOf(wire.from), nameOf(wire.to)]))
			if (name !== "") push(wiresAt, name, wire);
	for (const contact of loom.contacts.values()) {
		push(contactsOf, contact.part, contact);
		if (isInLine(loom, contact)) push(halves, `${contact.part}/${contact.cavity}`, contact.id);
	}
	const otherHalf = new Map<string, string>();
	for (const [a, b] of halves.values()) {
		if (a === undefined || b === undefined) continue;
		otherHalf.set(a, b);
		otherHalf.set(b, a);
	}
	return { wiresAt, contactsOf, otherHalf };
}

function push<T>(lists: Map<string, T[]>, key: string, item: T): void {
	const list = lists.get(key);
	if (list) list.push(item);
	else lists.set(key, [item]);
}

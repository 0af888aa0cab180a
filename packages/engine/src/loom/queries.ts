import { placeKey, tablesOf } from "./query-index.js";
import type { Contact, Loom, Wire, WireEnd } from "./types.js";

/** Wires with an end at this contact, in row order. */
export function wiresAtContact(loom: Loom, contact: string): readonly Wire[] {
	return tablesOf(loom).wiresAt.get(placeKey("contact", contact)) ?? [];
}

/** Wires with an end at this joint, in row order. */
export function wiresAtJoint(loom: Loom, joint: string): readonly Wire[] {
	return tablesOf(loom).wiresAt.get(placeKey("joint", joint)) ?? [];
}

/** The part's own contacts, in row order. */
export function contactsOfPart(loom: Loom, part: string): readonly Contact[] {
	return tablesOf(loom).contactsOf.get(part) ?? [];
}

/** Contacts seated in a connector, in row order; of an in-line connector its own, both halves. */
export function contactsInConnector(loom: Loom, connector: string): readonly Contact[] {
	return tablesOf(loom).contactsIn.get(connector) ?? [];
}

/** Wires that lie in a bundle, in row order; none for the empty name. */
export function wiresInBundle(loom: Loom, bundle: string): readonly Wire[] {
	return tablesOf(loom).bundles.get(bundle) ?? [];
}

/** The other wires twisted together with this one. */
export function pairMates(loom: Loom, wire: string): readonly Wire[] {
	const pair = loom.wires.get(wire)?.pair ?? "";
	return (tablesOf(loom).pairs.get(pair) ?? []).filter((mate) => mate.id !== wire);
}

/** The housing a contact sits in: its connector, or for an in-line connector's own contact that part. Empty for none. */
export function housingOf(loom: Loom, contact: Contact): string {
	return loom.parts.get(contact.part)?.kind === "connector" ? contact.part : contact.connector;
}

/** The contact through which an in-line connector's contact goes on: same cavity, other half. Undefined for any other contact. */
export function otherHalf(loom: Loom, contact: Contact): Contact | undefined {
	if (loom.parts.get(contact.part)?.kind !== "connector") return undefined;
	const role = contact.role === "a" ? "b" : "a";
	return contactsOfPart(loom, contact.part).find((c) => c.cavity === contact.cavity && c.role === role);
}

/**
 * Contacts in cavities next to this one, which a slip of the hand or a bridge of water can reach.
 *
 * Next are, in the same housing and half: the number before and after (`7` and `9` of `8`, `A7` and
 * `A9` of `A8`), and the same number in the letter before and after (`B8`). How a housing's rows lie
 * is not in the tables, so a cavity across from it may be missing. Common practice, no source.
 */
export function cavityNeighbours(loom: Loom, contact: Contact): readonly Contact[] {
	const housing = housingOf(loom, contact);
	const here = cavityPlace(contact.cavity);
	if (housing === "" || !here) return [];
	const inLine = housing === contact.part;
	return contactsInConnector(loom, housing).filter((other) => {
		const there = cavityPlace(other.cavity);
		if (!there || (inLine && other.role !== contact.role)) return false;
		const across = Math.abs(there.letter - here.letter);
		return across + Math.abs(there.number - here.number) === 1;
	});
}

/** Letter (0 for none, A is 65) and number of a cavity such as `8` or `A8`; undefined for other names. */
function cavityPlace(cavity: string): { readonly letter: number; readonly number: number } | undefined {
	const [, letter, number] = /^([A-Za-z]?)(\d{1,4})$/.exec(cavity) ?? [];
	if (number === undefined) return undefined;
	return { letter: letter ? letter.charCodeAt(0) : 0, number: Number(number) };
}

/** The name of the contact or joint at a wire's end; empty for a loose end. */
export function endName(end: WireEnd): string {
	if (end.at === "contact") return end.contact;
	return end.at === "joint" ? end.joint : "";
}

/**
 * The same thing in two cars of a kind. Names of wires are a shop's own, so a wire is known by the contacts
 * and joints at its ends; a contact by its name, or by what its part calls it where the cavity has moved.
 */
import { type Contact, endName, type Loom, type Wire } from "../../loom/index.js";

export interface MatchedWire {
	readonly was: Wire;
	readonly is: Wire;
	/** The `from` end of one is the `to` end of the other. */
	readonly turned: boolean;
}

/** Wires of one car, by name, with what stands for them in the other; each is used once. Both looms as delivered. */
export function matchWires(before: Loom, here: Loom): Map<string, MatchedWire> {
	const contactOf = (id: string) => {
		const contact = before.contacts.get(id);
		return (contact && matchContact(contact, here)?.id) ?? id;
	};
	const endsOf = ({ from, to }: Wire): [string, string] => [endName(from), endName(to)];
	const wanted = new Map(
		[...before.wires.values()].map((wire) => [
			wire,
			endsOf(wire).map((name) => (name.includes(".") ? contactOf(name) : name)) as [string, string],
		]),
	);
	const found = new Map<string, MatchedWire>();
	const used = new Set<string>();
	const pass = (fits: (wire: Wire, ends: readonly string[], other: Wire) => boolean) => {
		for (const [was, ends] of wanted) {
			if (found.has(was.id)) continue;
			const fitting = [...here.wires.values()].filter(
				(other) => !used.has(other.id) && fits(was, ends, other),
			);
			const is = fitting.find(({ id }) => id === was.id) ?? (fitting.length === 1 ? fitting[0] : undefined);
			if (is === undefined) continue;
			used.add(is.id);
			const [from, to] = endsOf(is);
			const same = Number(from === ends[0]) + Number(to === ends[1]);
			const crossed = Number(from === ends[1]) + Number(to === ends[0]);
			found.set(was.id, { was, is, turned: crossed > same });
		}
	};
	pass((_, ends, other) => {
		const [from, to] = endsOf(other);
		return from !== "" && to !== "" && [from, to].sort().join() === [...ends].sort().join();
	});
	pass(({ id }, _, other) => other.id === id);
	// One end has moved, and the name is another: the wire of the same circuit at the other end.
	pass(({ circuit }, ends, other) => {
		const shared = endsOf(other).some((name) => name !== "" && ends.includes(name));
		return circuit !== "" && other.circuit === circuit && shared;
	});
	return found;
}

/** The contact of `there` that does what one of `here` does: the same name, unless its part now gives the same words to another. */
export function matchContact(contact: Contact, there: Loom): Contact | undefined {
	const named = there.contacts.get(contact.id);
	const says = (other: Contact) => other.label === contact.label && other.role === contact.role;
	if (named !== undefined && (contact.label === "" || says(named))) return named;
	if (contact.label === "") return undefined;
	const alike = [...there.contacts.values()].filter((other) => other.part === contact.part && says(other));
	return alike.length === 1 ? alike[0] : named;
}

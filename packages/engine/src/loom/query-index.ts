import type { Contact, Loom, Wire } from "./types.js";

/** What stands where, collected once per loom. */
interface QueryTables {
	readonly wiresAt: ReadonlyMap<string, readonly Wire[]>;
	readonly contactsOf: ReadonlyMap<string, readonly Contact[]>;
	readonly contactsIn: ReadonlyMap<string, readonly Contact[]>;
	readonly bundles: ReadonlyMap<string, readonly Wire[]>;
	readonly pairs: ReadonlyMap<string, readonly Wire[]>;
}

/** Looms are immutable, so what was collected for one stays right; it goes when the loom goes. */
const collected = new WeakMap<Loom, QueryTables>();

/** The collected tables of a loom. Cost O(wires + contacts) the first time, then O(1). */
export function tablesOf(loom: Loom): QueryTables {
	const known = collected.get(loom);
	if (known) return known;
	const tables = collect(loom);
	collected.set(loom, tables);
	return tables;
}

/** Key of a place: contacts and joints are apart, whatever they are called. */
export function placeKey(at: "contact" | "joint", name: string): string {
	return `${at} ${name}`;
}

function collect(loom: Loom): QueryTables {
	const wiresAt = new Map<string, Wire[]>();
	const contactsOf = new Map<string, Contact[]>();
	const contactsIn = new Map<string, Contact[]>();
	const bundles = new Map<string, Wire[]>();
	const pairs = new Map<string, Wire[]>();
	for (const wire of loom.wires.values()) {
		for (const end of [wire.from, wire.to]) {
			if (end.at === "contact") push(wiresAt, placeKey("contact", end.contact), wire);
			if (end.at === "joint") push(wiresAt, placeKey("joint", end.joint), wire);
		}
		if (wire.bundle !== "") push(bundles, wire.bundle, wire);
		if (wire.pair !== "") push(pairs, wire.pair, wire);
	}
	for (const contact of loom.contacts.values()) {
		push(contactsOf, contact.part, contact);
		const inLine = loom.parts.get(contact.part)?.kind === "connector";
		const housing = inLine ? contact.part : contact.connector;
		if (housing !== "") push(contactsIn, housing, contact);
	}
	return { wiresAt, contactsOf, contactsIn, bundles, pairs };
}

function push<T>(lists: Map<string, T[]>, key: string, item: T): void {
	const list = lists.get(key);
	if (list) list.push(item);
	else lists.set(key, [item]);
}

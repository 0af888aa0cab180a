import type { Contact, Joint, Loom } from "../../loom/index.js";
import { connectorOf, isOwnConnector } from "../draft.js";
import { type Change, change } from "./change.js";
import { Places } from "./joined.js";
import { naturalOrder } from "./natural.js";
import { contactWireChanges, looseWireChanges } from "./wire-changes.js";

/**
 * What is different in loom `b` against loom `a`, out of the two looms alone: per connector
 * and cavity, then for what has no connector per part, joint and wire. In natural order.
 * Conditions, monitors and functions do not count, nor does which end of a wire is `from`.
 * Cost: O(wires + contacts), and s^2 for each group of s wires spliced together.
 */
export function compareLooms(a: Loom, b: Loom): Change[] {
	const before = new Places(a);
	const after = new Places(b);
	const contacts = new Map([...a.contacts, ...b.contacts]);
	return [
		...partChanges(a, b),
		...contactChanges(a, b),
		...[...contacts.values()].flatMap((contact) => contactWireChanges(before, after, contact)),
		...jointChanges(before, after),
		...looseWireChanges(before, after),
	].sort(order);
}

/** A connector itself comes before its cavities; elsewhere what has no name in a column comes last. */
function order(x: Change, y: Change): number {
	const own = (c: Change) => Number(c.contact !== "" || c.connector === "");
	if (x.connector === y.connector && own(x) !== own(y)) return own(x) - own(y);
	for (const column of ["connector", "cavity", "contact", "part", "joint", "wire"] as const) {
		const byColumn = naturalOrder(x[column], y[column]);
		if (byColumn !== 0) return byColumn;
	}
	return x.kind < y.kind ? -1 : Number(x.kind > y.kind);
}

/** Rows of two tables by name, where they differ: gone, new, or not the same. */
function differing<T>(
	a: ReadonlyMap<string, T>,
	b: ReadonlyMap<string, T>,
): [T | undefined, T | undefined][] {
	const ids = new Set([...a.keys(), ...b.keys()]);
	return [...ids]
		.map((id): [T | undefined, T | undefined] => [a.get(id), b.get(id)])
		.filter(([was, is]) => was !== is && stable(was) !== stable(is));
}

/** JSON with sorted keys: two equal rows give the same text. */
const stable = (value: unknown): string | undefined =>
	JSON.stringify(value, (_key, inner: unknown) =>
		inner !== null && typeof inner === "object" && !Array.isArray(inner)
			? Object.fromEntries(Object.entries(inner).sort(([x], [y]) => (x < y ? -1 : 1)))
			: inner,
	);

function partChanges(a: Loom, b: Loom): Change[] {
	return differing(a.parts, b.parts).map(([was, is]) => {
		const part = (is ?? was)!;
		const { id, kind, label } = part;
		const what = { part: id, connector: isOwnConnector(part) ? id : "" };
		const name = `${kind} ${id}${label === "" ? "" : ` (${label})`}`;
		if (!was) return change("part fitted", `${name} is fitted`, what);
		if (!is) return change("part removed", `${name} is taken out`, what);
		return change("part changed", `${name} is not the same as before`, what);
	});
}

/** Contacts of parts that are in both looms; those of parts fitted or removed go without saying. */
function contactChanges(a: Loom, b: Loom): Change[] {
	const rows = differing(a.contacts, b.contacts).filter(([was, is]) => {
		const { part } = (is ?? was)!;
		return a.parts.has(part) && b.parts.has(part);
	});
	return rows.map(([was, is]) => {
		const contact: Contact = (is ?? was)!;
		const { id, part, cavity } = contact;
		const what = { contact: id, part, cavity, connector: connectorOf(is ? b : a, contact) };
		if (!was) return change("contact added", `${id} is new`, what);
		if (!is) return change("contact removed", `${id} is gone`, what);
		return change("contact changed", `${id} is not the same as before`, what);
	});
}

function jointChanges(before: Places, after: Places): Change[] {
	const [a, b] = [before.loom.joints, after.loom.joints];
	const ownRow = differing(a, b).map(([was, is]) => {
		const { id, kind } = (is ?? was)!;
		if (!was)
			return change("joint added", `${kind} ${id} is made: ${meeting(after, id)} meet`, { joint: id });
		if (!is) return change("joint removed", `${kind} ${id} is gone`, { joint: id });
		return change("joint changed", `${kind} ${id} is not the same as before`, { joint: id });
	});
	const both = [...b.values()].filter((joint) => a.has(joint.id));
	return [...ownRow, ...both.flatMap((joint) => rewired(before, after, joint))];
}

/** The wires that meet at a joint, in natural order; a looped one twice. */
const meeting = (places: Places, joint: string): string =>
	places
		.atJoint(joint)
		.map(([wire]) => wire.id)
		.sort(naturalOrder)
		.join(", ") || "no wires";

function rewired(before: Places, after: Places, { id, kind }: Joint): Change[] {
	const [met, meet] = [meeting(before, id), meeting(after, id)];
	if (met === meet) return [];
	const text = `${kind} ${id}: ${met} met, now ${meet} meet`;
	return [change("joint rewired", text, { joint: id })];
}

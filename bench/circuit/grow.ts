/**
 * A loom grown from another: its circuits several times over on one battery, one set of feeds and one set of ground
 * points, as a larger vehicle has them. The wiring stays what it was, only more of it, so times at several sizes
 * compare like with like.
 */
import type { Condition, Contact, Joint, Loom, Part, Wire, WireEnd } from "@loomwright/engine";

/** Kinds of which one serves all copies. */
const SHARED_KINDS: ReadonlySet<string> = new Set(["battery", "generator", "starter"]);

type Rename = (id: string) => string;

/**
 * @param copies how often the circuits stand in the result, the first with their own names, the others with `~2`, ...
 * @param feeds bars that all copies share; sources, the starter and ground points are shared in any case
 * @returns the loom; sources and the cables between shared points are made that many times as strong, monitors and
 *   functions are those of the first copy
 * @throws RangeError unless `copies` is a whole number from 1
 */
export function grow(loom: Loom, copies: number, feeds: ReadonlySet<string>): Loom {
	if (!Number.isInteger(copies) || copies < 1)
		throw new RangeError(`a loom cannot be grown to ${copies} copies`);
	const shared = (id: string): boolean => {
		const part = loom.parts.get(loom.contacts.get(id)?.part ?? id);
		if (part) return SHARED_KINDS.has(part.kind);
		return feeds.has(id) || loom.joints.get(id)?.kind === "ground";
	};
	const endShared = (at: WireEnd) =>
		at.at === "contact" ? shared(at.contact) : at.at === "joint" && shared(at.joint);

	const parts = new Map<string, Part>();
	const contacts = new Map<string, Contact>();
	const wires = new Map<string, Wire>();
	const joints = new Map<string, Joint>();
	const settings = new Map<string, Map<string, string>>();
	for (let copy = 1; copy <= copies; copy++) {
		const own: Rename = (id) => (copy === 1 || id === "" ? id : `${id}~${copy}`);
		const name: Rename = (id) => (shared(id) ? id : own(id));
		for (const part of loom.parts.values()) {
			const id = name(part.id);
			if (!parts.has(id)) parts.set(id, { ...part, id, values: stronger(part, copies) });
		}
		for (const contact of loom.contacts.values()) {
			const id = name(contact.id);
			const [part, connector] = [name(contact.part), name(contact.connector)];
			if (!contacts.has(id)) contacts.set(id, { ...contact, id, part, connector });
		}
		for (const joint of loom.joints.values()) {
			const id = name(joint.id);
			if (!joints.has(id)) joints.set(id, { ...joint, id });
		}
		for (const wire of loom.wires.values()) {
			const cable = endShared(wire.from) && endShared(wire.to);
			if (cable && copy > 1) continue;
			const id = own(wire.id);
			const ends = { from: renamed(wire.from, name), to: renamed(wire.to, name) };
			const mm2 = cable ? wire.mm2 * copies : wire.mm2;
			wires.set(id, { ...wire, ...ends, id, mm2, bundle: own(wire.bundle), pair: own(wire.pair) });
		}
		for (const condition of loom.conditions.values()) {
			const into = settings.get(condition.id) ?? new Map<string, string>();
			settings.set(condition.id, into);
			for (const [id, state] of condition.settings) into.set(name(id), state);
		}
	}
	const conditions = new Map(
		[...loom.conditions].map(([id, condition]): [string, Condition] => [
			id,
			{ ...condition, settings: settings.get(id) ?? condition.settings },
		]),
	);
	return { ...loom, name: `${loom.name}, ${copies} times`, parts, contacts, wires, joints, conditions };
}

function renamed(end: WireEnd, name: Rename): WireEnd {
	if (end.at === "contact") return { at: "contact", contact: name(end.contact) };
	return end.at === "joint" ? { at: "joint", joint: name(end.joint) } : end;
}

/** A source for so many cars has that many times less resistance inside. */
function stronger(part: Part, copies: number): Part["values"] {
	const { ohms } = part.values;
	return SHARED_KINDS.has(part.kind) && ohms !== undefined
		? { ...part.values, ohms: ohms / copies }
		: part.values;
}

/**
 * Circuits that no meter step may touch: restraints (pyrotechnic) and high voltage.
 * A contact is such if its part, its connector, or any wire on it is marked so.
 */
import { contactsInConnector, contactsOfPart, type Loom, wiresAtContact } from "../loom/index.js";

const NEVER: Readonly<Record<string, string>> = {
	pyrotechnic:
		"belongs to a restraint circuit (pyrotechnic): never measured here. Battery off, wait the time the car's maker gives, and follow the maker's procedure",
	"high voltage":
		"belongs to a high-voltage circuit: out of scope here. Only trained persons, by the maker's procedure",
};

const cache = new WeakMap<Loom, ReadonlyMap<string, string>>();

/** Why a contact or joint must not be measured, or undefined when it may. */
export function forbidden(loom: Loom, name: string): string | undefined {
	const mark = pointsOf(loom).get(name);
	return mark && `${name} ${NEVER[mark]}.`;
}

function pointsOf(loom: Loom): ReadonlyMap<string, string> {
	let marked = cache.get(loom);
	if (marked === undefined) {
		marked = markedPoints(loom);
		cache.set(loom, marked);
	}
	return marked;
}

/**
 * The mark of a forbidden circuit that work on any of these parts, connectors, contacts, joints or wires would touch:
 * a housing that holds one of its contacts, a wire that ends at one. Undefined where none is touched.
 */
export function forbiddenWork(loom: Loom, ids: readonly string[]): string | undefined {
	let known = workCache.get(loom);
	if (known === undefined) {
		known = new Map();
		workCache.set(loom, known);
	}
	for (const id of ids) {
		if (!known.has(id)) known.set(id, markNear(loom, id));
		const mark = known.get(id);
		if (mark) return mark;
	}
	return undefined;
}

const workCache = new WeakMap<Loom, Map<string, string | undefined>>();

function markNear(loom: Loom, id: string): string | undefined {
	const part = loom.parts.get(id);
	const held = part ? [...contactsOfPart(loom, id), ...contactsInConnector(loom, id)].map((c) => c.id) : [id];
	const own = loom.wires.get(id);
	const wires = [...(own ? [own] : []), ...held.flatMap((contact) => wiresAtContact(loom, contact))];
	const mark = markOf([...(part?.marks ?? []), ...wires.flatMap((wire) => wire.marks)]);
	if (mark) return mark;
	const ends = wires
		.flatMap((wire) => [wire.from, wire.to])
		.flatMap((end) => (end.at === "contact" ? [end.contact] : []));
	return [...held, ...ends].map((point) => pointsOf(loom).get(point)).find((found) => found !== undefined);
}

/** What is said instead of a mend or a step where a forbidden circuit is touched. */
export function forbiddenMend(mark: string): string {
	return `stop here: this touches a ${mark === "pyrotechnic" ? "restraint" : "high-voltage"} circuit. ${NEVER[mark]!.replace(/^[^:]*: /, "").replace(/^./, (c) => c.toUpperCase())}.`;
}

function markOf(marks: readonly string[]): string | undefined {
	return marks.find((mark) => mark in NEVER);
}

function markedPoints(loom: Loom): ReadonlyMap<string, string> {
	const points = new Map<string, string>();
	for (const contact of loom.contacts.values()) {
		const part = markOf(loom.parts.get(contact.part)?.marks ?? []);
		const housing = markOf(loom.parts.get(contact.connector)?.marks ?? []);
		const mark = part ?? housing;
		if (mark) points.set(contact.id, mark);
	}
	for (const joint of loom.joints.values()) {
		const mark = markOf(joint.marks);
		if (mark) points.set(joint.id, mark);
	}
	for (const wire of loom.wires.values()) {
		const mark = markOf(wire.marks);
		if (!mark) continue;
		for (const end of [wire.from, wire.to]) {
			if (end.at === "contact") points.set(end.contact, mark);
			// A ground point shared with other circuits stays measurable; a splice inside the circuit does not.
			else if (end.at === "joint" && loom.joints.get(end.joint)?.kind === "splice")
				points.set(end.joint, mark);
		}
	}
	return points;
}

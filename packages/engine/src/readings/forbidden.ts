/**
 * Circuits that no meter step may touch: restraints (pyrotechnic) and high voltage.
 * A contact is such if its part, its connector, or any wire on it is marked so.
 */
import type { Loom } from "../loom/index.js";

const NEVER: Readonly<Record<string, string>> = {
	pyrotechnic:
		"belongs to a restraint circuit (pyrotechnic): never measured here. Battery off, wait the time the car's maker gives, and follow the maker's procedure",
	"high voltage":
		"belongs to a high-voltage circuit: out of scope here. Only trained persons, by the maker's procedure",
};

const cache = new WeakMap<Loom, ReadonlyMap<string, string>>();

/** Why a contact or joint must not be measured, or undefined when it may. */
export function forbidden(loom: Loom, name: string): string | undefined {
	let marked = cache.get(loom);
	if (marked === undefined) {
		marked = markedPoints(loom);
		cache.set(loom, marked);
	}
	const mark = marked.get(name);
	return mark && `${name} ${NEVER[mark]}.`;
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

/**
 * How far up a point is drawn: 1 at supply, 0 at ground, in between by how the loom hangs together.
 *
 * The heights are potentials of a made-up resistor network, so that current seems to flow down the page in
 * every condition, also with the battery off. Sources and ground points are held, all else is solved for.
 */
import type { Contact, Loom, Position } from "@loomwright/engine";
import { indexOf, nameOf } from "./loom-index.js";
import { type Edge, potentials } from "./potentials.js";
import { sideByKind } from "./sides.js";
import type { Side } from "./types.js";

/** Made-up conductances: a wire, what only switches or protects, a load. */
const WIRE = 8;
const THROUGH = 4;
const LOAD = 0.01;
/** Towards ground, everywhere: what leads nowhere still falls away from its supply. */
const LEAK = 0.0005;

/** Heights of a unit's upper and lower pins. A unit's feed is a load: it hangs at `UNIT`, it is not held there. */
const UPPER = 0.45;
const LOWER = 0.4;
const UNIT = "@unit";
const FEEDS = new Set(["supply", "wake"]);

const known = new WeakMap<Loom, ReadonlyMap<string, number>>();

/** Height 0..1 of every contact and joint of the loom; solved once per loom. */
export function heightsOf(loom: Loom): ReadonlyMap<string, number> {
	let heights = known.get(loom);
	if (heights === undefined) {
		const names = [...loom.contacts.keys(), ...loom.joints.keys()];
		heights = potentials(names, edgesOf(loom), heldOf(loom), LEAK);
		known.set(loom, heights);
	}
	return heights;
}

function edgesOf(loom: Loom): Edge[] {
	const { contactsOf, otherHalf } = indexOf(loom);
	const edges: Edge[] = [];
	for (const wire of loom.wires.values()) {
		const [a, b] = [nameOf(wire.from), nameOf(wire.to)];
		if (a !== "" && b !== "") edges.push({ a, b, conductance: WIRE });
	}
	for (const [a, b] of otherHalf) if (a < b) edges.push({ a, b, conductance: WIRE });
	for (const [part, contacts] of contactsOf) {
		const { kind, positions } = loom.parts.get(part)!;
		if (kind === "control unit")
			for (const { id, role } of contacts)
				if (FEEDS.has(role)) edges.push({ a: id, b: UNIT, conductance: LOAD });
		contacts.forEach((a, k) => {
			for (const b of contacts.slice(k + 1)) {
				const conductance = insideOf(kind, a.role, b.role, positions);
				if (conductance > 0) edges.push({ a: a.id, b: b.id, conductance });
			}
		});
	}
	return edges;
}

/** Between two pins of a part, by their roles: what can pass in some state; 0 for nothing. */
function insideOf(kind: string, a: string, b: string, positions: readonly Position[]): number {
	switch (kind) {
		case "control unit":
		case "connector":
		case "battery":
		case "generator":
			return 0;
		case "fuse":
			return THROUGH;
		case "relay": {
			const coil = [a, b].filter((role) => role === "85" || role === "86").length;
			return coil === 1 ? 0 : coil === 2 ? LOAD : THROUGH;
		}
		case "switch": {
			const joined = positions.some(({ joins }) =>
				joins.some(([x, y]) => (x === a && y === b) || (x === b && y === a)),
			);
			return joined ? THROUGH : 0;
		}
		default:
			return LOAD;
	}
}

/** Heights held: sources and ground points at the ends, units and sensors by their sides between them. */
function heldOf(loom: Loom): Map<string, number> {
	const held = new Map<string, number>([[UNIT, UPPER]]);
	for (const joint of loom.joints.values()) if (joint.kind === "ground") held.set(joint.id, 0);
	for (const contact of loom.contacts.values()) {
		const height = heldAt(loom.parts.get(contact.part)?.kind ?? "", contact, sideByKind(loom, contact));
		if (height !== undefined) held.set(contact.id, height);
	}
	return held;
}

function heldAt(kind: string, contact: Contact, side: Side | undefined): number | undefined {
	if (kind === "battery" || kind === "generator") return contact.role === "-" ? 0.9 : 1;
	if (kind === "control unit") {
		if (FEEDS.has(contact.role)) return undefined;
		return side === "north" ? UPPER : LOWER;
	}
	return side === "north" ? 0.3 : undefined;
}

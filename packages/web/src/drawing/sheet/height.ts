/**
 * How far up a point is drawn: 1 at supply, 0 at ground, in between by how the loom hangs together.
 *
 * The heights are potentials of a made-up resistor network (every point is the mean of its neighbours,
 * weighted), so that current seems to flow down the page in every condition, also with the battery off.
 */
import type { Contact, Loom } from "@loomwright/engine";
import { indexOf, nameOf } from "./loom-index.js";
import { sideByKind } from "./sides.js";
import type { Side } from "./types.js";

interface Edge {
	readonly a: string;
	readonly b: string;
	readonly weight: number;
}

const WIRE_WEIGHT = 8;
/** Towards ground, everywhere: what leads nowhere still falls away from its supply. */
const LEAK = 0.02;
const SWEEPS = 400;

const known = new WeakMap<Loom, ReadonlyMap<string, number>>();

/** Height 0..1 of every contact and joint of the loom. Cost O(sweeps x wires), once per loom. */
export function heightsOf(loom: Loom): ReadonlyMap<string, number> {
	let heights = known.get(loom);
	if (heights === undefined) {
		heights = relax(loom, edgesOf(loom), fixedOf(loom));
		known.set(loom, heights);
	}
	return heights;
}

function relax(
	loom: Loom,
	edges: readonly Edge[],
	fixed: ReadonlyMap<string, number>,
): ReadonlyMap<string, number> {
	const heights = new Map<string, number>();
	const near = new Map<string, { to: string; weight: number }[]>();
	for (const name of [...loom.contacts.keys(), ...loom.joints.keys()]) {
		heights.set(name, fixed.get(name) ?? 0.5);
		near.set(name, []);
	}
	for (const { a, b, weight } of edges) {
		near.get(a)?.push({ to: b, weight });
		near.get(b)?.push({ to: a, weight });
	}
	for (let sweep = 0; sweep < SWEEPS; sweep++)
		for (const [name, neighbours] of near) {
			if (fixed.has(name) || neighbours.length === 0) continue;
			let sum = 0;
			let weights = LEAK;
			for (const { to, weight } of neighbours) {
				sum += weight * heights.get(to)!;
				weights += weight;
			}
			heights.set(name, sum / weights);
		}
	return heights;
}

function edgesOf(loom: Loom): Edge[] {
	const { contactsOf, otherHalf } = indexOf(loom);
	const edges: Edge[] = [];
	for (const wire of loom.wires.values()) {
		const [a, b] = [nameOf(wire.from), nameOf(wire.to)];
		if (a !== "" && b !== "") edges.push({ a, b, weight: WIRE_WEIGHT });
	}
	for (const [a, b] of otherHalf) if (a < b) edges.push({ a, b, weight: WIRE_WEIGHT });
	for (const [part, contacts] of contactsOf) {
		const { kind, positions } = loom.parts.get(part)!;
		for (const [a, b] of innerPairs(kind, contacts, positions)) edges.push({ a, b, weight: 1 });
	}
	return edges;
}

/** Contacts of a part between which current can pass in some state. */
function innerPairs(
	kind: string,
	contacts: readonly Contact[],
	positions: readonly { readonly joins: readonly (readonly [string, string])[] }[],
): (readonly [string, string])[] {
	if (kind === "control unit" || kind === "connector" || kind === "battery" || kind === "generator")
		return [];
	const joined = (a: string, b: string) => {
		if (kind === "relay") return (a === "85" || a === "86") === (b === "85" || b === "86");
		if (kind !== "switch") return true;
		return positions.some(({ joins }) =>
			joins.some(([x, y]) => (x === a && y === b) || (x === b && y === a)),
		);
	};
	return contacts.flatMap((a, k) =>
		contacts
			.slice(k + 1)
			.filter((b) => joined(a.role, b.role))
			.map((b) => [a.id, b.id] as const),
	);
}

/** Heights held: sources and ground points at the ends, units and sensors by their sides between them. */
function fixedOf(loom: Loom): Map<string, number> {
	const fixed = new Map<string, number>();
	for (const joint of loom.joints.values()) if (joint.kind === "ground") fixed.set(joint.id, 0);
	for (const contact of loom.contacts.values()) {
		const height = heldAt(loom.parts.get(contact.part)?.kind ?? "", contact, sideByKind(loom, contact));
		if (height !== undefined) fixed.set(contact.id, height);
	}
	return fixed;
}

function heldAt(kind: string, contact: Contact, side: Side | undefined): number | undefined {
	if (kind === "battery" || kind === "generator") return contact.role === "-" ? 0.9 : 1;
	if (kind === "control unit") return side === "north" ? 0.45 : 0.4;
	return side === "north" ? 0.3 : undefined;
}

/** Makes the drawing's data out of a loom and a path. */
import type { Contact, Joint, Loom, Wire } from "@loomwright/engine";
import { type Collected, collect } from "./collect.js";
import { heightsOf } from "./height.js";
import { indexOf, isInLine, nameOf } from "./loom-index.js";
import { sideByKind } from "./sides.js";
import type {
	Sheet,
	SheetContactPair,
	SheetEnd,
	SheetNode,
	SheetPart,
	SheetPort,
	SheetWire,
} from "./types.js";

/** State words of parts and connectors in the condition drawn. */
export type States = (part: string) => string;

/**
 * @param path contacts, wires, joints and parts to draw; unknown names are reported in the sheet
 * @param further how many wires further than the path
 */
export function buildSheet(loom: Loom, path: readonly string[], further: number, states: States): Sheet {
	const shown = collect(loom, path, further);
	const wires = [...shown.wires].map((id) => drawnWire(loom, shown, loom.wires.get(id)!));
	return {
		nodes: [...partNodes(loom, shown, states), ...jointNodes(loom, shown, wires), ...looseNodes(loom, shown)],
		wires,
		unknown: shown.unknown,
		more: shown.more,
	};
}

function partNodes(loom: Loom, shown: Collected, states: States): SheetNode[] {
	const parts = new Map<string, Contact[]>();
	for (const contact of loom.contacts.values()) {
		if (!shown.contacts.has(contact.id)) continue;
		const node = nodeOf(loom, contact);
		parts.set(node, [...(parts.get(node) ?? []), contact]);
	}
	return [...parts].map(([id, contacts]) =>
		isInLine(loom, contacts[0]!)
			? pairNode(loom, id, contacts, states)
			: partNode(loom, id, contacts, states),
	);
}

function partNode(loom: Loom, id: string, contacts: readonly Contact[], states: States): SheetPart {
	const { kind, label, place, marks, positions } = loom.parts.get(id)!;
	const ports = portsOf(loom, contacts);
	return { what: "part", id, kind, label, place, marks, ports, positions, state: states(id) };
}

function pairNode(loom: Loom, id: string, contacts: readonly Contact[], states: States): SheetContactPair {
	const { part, cavity } = contacts[0]!;
	const label = loom.parts.get(part)?.label ?? "";
	const mated = states(part) !== "unmated";
	return { what: "pair", id, connector: part, label, cavity, ports: portsOf(loom, contacts), mated };
}

/** A two-pin part has one pin above and one below; of others those above the part's mean height are above. */
function portsOf(loom: Loom, contacts: readonly Contact[]): SheetPort[] {
	const heights = heightsOf(loom);
	const height = (contact: Contact) => heights.get(contact.id) ?? 0.5;
	const mean = contacts.reduce((sum, contact) => sum + height(contact), 0) / contacts.length;
	const highest = contacts.reduce((a, b) => (height(b) > height(a) ? b : a));
	return contacts.map((contact) => ({
		contact: contact.id,
		name: contact.id.slice(contact.part.length + 1),
		role: contact.role,
		label: contact.label,
		connector: contact.connector,
		cavity: contact.cavity,
		side:
			sideByKind(loom, contact) ?? (contact === highest || height(contact) > mean + 1e-9 ? "north" : "south"),
	}));
}

function jointNodes(loom: Loom, shown: Collected, wires: readonly SheetWire[]): SheetNode[] {
	return [...shown.joints].map((id) => {
		const { kind, label, place }: Joint = loom.joints.get(id)!;
		const ending = (end: "upper" | "lower") =>
			wires.filter((wire) => wire[end].node === id).map((wire) => wire.id);
		const all = indexOf(loom).wiresAt.get(id) ?? [];
		const undrawn = all.filter((wire) => !shown.wires.has(wire.id)).length;
		return { what: "joint", id, kind, label, place, above: ending("lower"), below: ending("upper"), undrawn };
	});
}

function looseNodes(loom: Loom, shown: Collected): SheetNode[] {
	return [...shown.wires].flatMap((id) => {
		const wire = loom.wires.get(id)!;
		return (["from", "to"] as const).flatMap((side): SheetNode[] => {
			const end = wire[side];
			return end.at === "loose" ? [{ what: "loose", id: `${id}@${side}`, insulated: end.insulated }] : [];
		});
	});
}

/** The drawing's node of a contact: its part, or the cavity of an in-line connector. */
function nodeOf(loom: Loom, contact: Contact): string {
	return isInLine(loom, contact) ? `${contact.part}/${contact.cavity}` : contact.part;
}

function endOf(loom: Loom, wire: Wire, side: "from" | "to"): SheetEnd {
	const end = wire[side];
	if (end.at === "loose") return { node: `${wire.id}@${side}`, port: "" };
	if (end.at === "joint") return { node: end.joint, port: "" };
	return { node: nodeOf(loom, loom.contacts.get(end.contact)!), port: end.contact };
}

function drawnWire(loom: Loom, shown: Collected, wire: Wire): SheetWire {
	const heights = heightsOf(loom);
	const height = (side: "from" | "to") => heights.get(nameOf(wire[side])) ?? -1;
	const forward = height("from") >= height("to");
	const ends = [endOf(loom, wire, "from"), endOf(loom, wire, "to")] as const;
	const { id, colours, mm2, metres, circuit, pair, bundle, marks } = wire;
	const named = (end: SheetEnd) => shown.named.has(end.port || end.node);
	return {
		id,
		upper: ends[forward ? 0 : 1],
		lower: ends[forward ? 1 : 0],
		forward,
		colours,
		mm2,
		metres,
		circuit,
		pair,
		bundle,
		marks,
		onPath: shown.named.has(id) || ends.every(named),
	};
}

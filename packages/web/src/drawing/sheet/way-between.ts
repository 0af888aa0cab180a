/** The shortest way through the loom between two points: over wires, splices, connectors and small parts. */
import type { Loom } from "@loomwright/engine";
import { indexOf, nameOf } from "./loom-index.js";

/** Going through a part costs as much as so many wires: least through what only switches or protects. */
const THROUGH_CONTACT = 1;
const THROUGH_LOAD = 12;
/** Through a control unit only where nothing else joins the two points; by its ground rather than by other pins. */
const THROUGH_UNIT_GROUND = 30;
const THROUGH_UNIT = 90;
/** Going through a ground point or a bar, where everything meets, or through the metal between ground points. */
const THROUGH_GROUND = 5;

interface Step {
	readonly to: string;
	readonly by: string;
	readonly cost: number;
}

/**
 * Names of the contacts, joints and wires on the way, both ends included, then the other wires at the two
 * ends; only these where nothing joins them. Cost O(wires^2) at worst, far below in looms.
 */
export function wayBetween(loom: Loom, from: string, to: string): string[] {
	const way = shortest(loom, from, to);
	const { wiresAt } = indexOf(loom);
	const ends = [way[0], way.at(-1)].filter((end) => end !== undefined && loom.contacts.has(end));
	const own = ends.flatMap((end) => wiresAt.get(end!) ?? []).map((wire) => wire.id);
	return [...new Set([...way, ...own])];
}

function shortest(loom: Loom, from: string, to: string): string[] {
	const [start, end] = [from, to].map((name) => name.replace(/!pin$/, "")) as [string, string];
	const known = (name: string) => loom.contacts.has(name) || loom.joints.has(name);
	if (!known(start) || !known(end)) return [start, end].filter(known);
	const best = new Map<string, { cost: number; before: string; by: string }>([
		[start, { cost: 0, before: "", by: "" }],
	]);
	const open = new Set([start]);
	while (open.size > 0) {
		const at = [...open].reduce((a, b) => (best.get(b)!.cost < best.get(a)!.cost ? b : a));
		if (at === end) return trace(best, end);
		open.delete(at);
		for (const { to: next, by, cost } of steps(loom, at)) {
			const sum = best.get(at)!.cost + cost;
			if (sum >= (best.get(next)?.cost ?? Number.POSITIVE_INFINITY)) continue;
			best.set(next, { cost: sum, before: at, by });
			open.add(next);
		}
	}
	return [start, end];
}

function steps(loom: Loom, at: string): Step[] {
	const { wiresAt, contactsOf, otherHalf } = indexOf(loom);
	const joint = loom.joints.get(at);
	const through = joint && joint.kind !== "splice" ? THROUGH_GROUND : 1;
	const found = (wiresAt.get(at) ?? []).flatMap((wire): Step[] =>
		[nameOf(wire.from), nameOf(wire.to)]
			.filter((name) => name !== "" && name !== at)
			.map((name) => ({ to: name, by: wire.id, cost: through })),
	);
	if (joint?.kind === "ground")
		for (const other of loom.joints.values())
			if (other.kind === "ground" && other.metal === joint.metal && other.id !== at)
				found.push({ to: other.id, by: "", cost: THROUGH_GROUND });
	const half = otherHalf.get(at);
	if (half !== undefined) found.push({ to: half, by: "", cost: 0 });
	const contact = loom.contacts.get(at);
	const kind = contact && loom.parts.get(contact.part)?.kind;
	if (!contact || kind === "connector") return found;
	for (const { id, role } of contactsOf.get(contact.part) ?? [])
		if (id !== at) found.push({ to: id, by: "", cost: throughCost(kind, contact.role, role) });
	return found;
}

function throughCost(kind: string | undefined, a: string, b: string): number {
	if (kind === "control unit") return a === "ground" || b === "ground" ? THROUGH_UNIT_GROUND : THROUGH_UNIT;
	const conducts = kind === "fuse" || kind === "switch" || (kind === "relay" && [a, b].every(isThrow));
	return conducts ? THROUGH_CONTACT : THROUGH_LOAD;
}

/** Contact terminals of a relay after DIN 72552, as against those of its coil. */
const isThrow = (role: string) => role === "30" || role === "87" || role === "87a";

function trace(best: ReadonlyMap<string, { before: string; by: string }>, end: string): string[] {
	const way: string[] = [];
	for (let at = end; at !== ""; ) {
		const { before, by } = best.get(at)!;
		way.unshift(...[by, at].filter(Boolean));
		at = before;
	}
	return way;
}

/** The feed side: what a supply reaches through the loom, switch and relay contacts, in any condition. */
import { type Circuit, pinNode } from "../../circuit/index.js";
import { type Contact, contactsOfPart } from "../../loom/index.js";
import { groundNets, isLoom, isThere, netOf } from "./nets.js";
import { across, branchesAt, type Passes } from "./ways.js";

const SOURCE_ROLES: Readonly<Record<string, string>> = { battery: "+", generator: "B+" };

/** Pins at which a part takes its current; by kind. A two-pin load may be fed at either. */
const TAKES: Readonly<Record<string, readonly string[]>> = {
	lamp: ["a", "b"],
	led: ["a", "b"],
	motor: ["a", "b"],
	heater: ["a", "b"],
	coil: ["a", "b"],
	injector: ["a", "b"],
	igniter: ["a", "b"],
	resistor: ["a", "b"],
	relay: ["85", "86"],
	"ignition coil": ["supply"],
	"lambda sensor": ["heater a", "heater b"],
	starter: ["30", "50"],
	"control unit": ["supply", "wake"],
	module: ["supply", "wake"],
};

/** Plus posts of batteries and generators. */
export function supplyPosts(circuit: Circuit): Contact[] {
	return contactsWith(circuit, (kind, role) => SOURCE_ROLES[kind] === role);
}

/** Pins where parts take their current. Signal inputs are none. */
export function takingPins(circuit: Circuit): Contact[] {
	return contactsWith(circuit, (kind, role) => TAKES[kind]?.includes(role) ?? false);
}

function contactsWith(circuit: Circuit, wanted: (kind: string, role: string) => boolean): Contact[] {
	const { loom } = circuit;
	return [...loom.parts.values()].flatMap((part) =>
		contactsOfPart(loom, part.id).filter((contact) => wanted(part.kind, contact.role)),
	);
}

/** True for the element of a fuse. */
export function isFuse(circuit: Circuit, branch: number): boolean {
	return deviceKind(circuit, branch) === "fuse";
}

/** Contacts of switches and relays, and junctions of diodes: what passes a feed on when it is closed. */
export function passesOn(circuit: Circuit, branch: number): boolean {
	const kind = deviceKind(circuit, branch);
	return (
		kind === "switch" ||
		kind === "diode" ||
		(kind === "relay" && circuit.branches[branch]!.owner.element !== "coil")
	);
}

/** Kind of the device a branch is an element of; empty for the loom and the metal. */
export function deviceKind(circuit: Circuit, branch: number): string {
	const { what, id } = circuit.branches[branch]!.owner;
	return what === "device" ? (circuit.loom.parts.get(id)?.kind ?? "") : "";
}

/**
 * Walks a feed: over the loom and closed or open contacts, never into ground.
 * @param fuses may fuses be crossed?
 */
export function feedPasses(circuit: Circuit, fuses: boolean): Passes {
	const grounds = groundNets(circuit);
	return (branch, to) => {
		if (to < 0 || grounds.has(netOf(circuit, to))) return false;
		if (isLoom(circuit, branch)) return isThere(circuit, branch);
		return passesOn(circuit, branch) || (fuses && isFuse(circuit, branch));
	};
}

/** Node of a contact's own side; of a cavity of a connector the loom's terminal. */
export function pinOf(circuit: Circuit, contact: Contact): number {
	return circuit.node(pinNode(contact.id)) ?? circuit.node(contact.id)!;
}

const regionCache = new WeakMap<Circuit, Int32Array>();

/** Number of the region of a node: what a feed reaches without crossing a fuse. Ground and the metal have none: -1. */
export function regionOf(circuit: Circuit, node: number): number {
	let of = regionCache.get(circuit);
	if (of === undefined) {
		of = label(circuit);
		regionCache.set(circuit, of);
	}
	return node < 0 ? -1 : of[node]!;
}

function label(circuit: Circuit): Int32Array {
	const of = new Int32Array(circuit.nodes.length).fill(-1);
	const passes = feedPasses(circuit, false);
	const grounds = groundNets(circuit);
	for (let start = 0; start < of.length; start++) {
		if (of[start] !== -1 || grounds.has(netOf(circuit, start))) continue;
		of[start] = start;
		for (const stack = [start]; stack.length > 0; ) {
			const node = stack.pop()!;
			for (const branch of branchesAt(circuit, node)) {
				const to = across(circuit, branch, node);
				if (to < 0 || of[to] !== -1 || !passes(branch, to)) continue;
				of[to] = start;
				stack.push(to);
			}
		}
	}
	return of;
}

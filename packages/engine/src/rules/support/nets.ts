/**
 * Nets: what the loom itself joins, all plugged in, no device and no car metal between.
 * Two points of one net are the same conductor.
 */

import { componentOf } from "../../circuit/components.js";
import {
	type Circuit,
	type Operating,
	operate,
	pinNode,
	probeValue,
	REFERENCE,
	type Standing,
} from "../../circuit/index.js";

const loomAlone = new WeakMap<Circuit, Operating>();
const loomAndMetal = new WeakMap<Circuit, Operating>();

/** The loom alone: wires, crimps, mated contacts and joints conduct, nothing else does. */
const bare = (circuit: Circuit) => without(circuit, loomAlone, (k) => isLoom(circuit, k));

/** The loom and the car's metal. */
const withMetal = (circuit: Circuit) =>
	without(circuit, loomAndMetal, (k) => circuit.branches[k]!.owner.what !== "device");

function without(
	circuit: Circuit,
	cache: WeakMap<Circuit, Operating>,
	conducts: (branch: number) => boolean,
): Operating {
	let point = cache.get(circuit);
	if (point === undefined) {
		const rest = circuit.standingOf(new Map(), "no devices");
		const siemens = rest.siemens.map((g, k) => (conducts(k) ? g : 0));
		const emf = new Float64Array(siemens.length);
		const standing: Standing = { condition: rest.condition, siemens, emf, automata: [], controls: [] };
		point = operate(circuit, standing, { dead: true });
		cache.set(circuit, point);
	}
	return point;
}

/** A wire, crimp, mated contact or joint: not a device, not the car's metal. */
export function isLoom(circuit: Circuit, branch: number): boolean {
	const { what } = circuit.branches[branch]!.owner;
	return what !== "device" && what !== "metal";
}

/** Does this branch of the loom conduct when all is plugged in? (A branch of another variant does not.) */
export function isThere(circuit: Circuit, branch: number): boolean {
	return bare(circuit).siemens[branch]! > 0;
}

/** Number of the net of a node. */
export function netOf(circuit: Circuit, node: number): number {
	return componentOf(bare(circuit).components, node);
}

/** Number of the net at a part's own pin. */
export function netAt(circuit: Circuit, contact: string): number {
	return netOf(circuit, circuit.node(pinNode(contact)) ?? circuit.node(contact)!);
}

/** Ohms between two part pins over the loom alone; NaN where they are not joined. */
export function loomOhms(circuit: Circuit, from: string, to: string): number {
	return loomOhmsBetween(circuit, circuit.node(pinNode(from))!, circuit.node(pinNode(to))!);
}

/** The same between two nodes. */
export function loomOhmsBetween(circuit: Circuit, a: number, b: number): number {
	return probeValue(bare(circuit), { kind: "ohms", a, b });
}

/**
 * Ohms from a part's pin to the battery's minus over the loom and the car's metal, no device between; NaN where
 * nothing leads there. A car without a battery is measured to the body.
 */
export function earthOhms(circuit: Circuit, contact: string): number {
	const { contacts, parts } = circuit.loom;
	const minus = [...contacts.values()].find((c) => c.role === "-" && parts.get(c.part)?.kind === "battery");
	const b = minus === undefined ? REFERENCE : circuit.node(pinNode(minus.id))!;
	return probeValue(withMetal(circuit), { kind: "ohms", a: circuit.node(pinNode(contact))!, b });
}

const groundCache = new WeakMap<Circuit, ReadonlySet<number>>();

/** Nets that are ground: bolted to the car's metal, or at a battery's or generator's minus. */
export function groundNets(circuit: Circuit): ReadonlySet<number> {
	let nets = groundCache.get(circuit);
	if (nets === undefined) {
		const { joints, contacts, parts } = circuit.loom;
		const found = new Set<number>();
		for (const joint of joints.values())
			if (joint.kind === "ground") found.add(netOf(circuit, circuit.node(joint.id) ?? -1));
		for (const contact of contacts.values()) {
			const kind = parts.get(contact.part)?.kind;
			if (contact.role === "-" && (kind === "battery" || kind === "generator"))
				found.add(netAt(circuit, contact.id));
		}
		nets = found;
		groundCache.set(circuit, nets);
	}
	return nets;
}

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
	type Standing,
} from "../../circuit/index.js";

const cache = new WeakMap<Circuit, Operating>();

/** The loom alone: wires, crimps, mated contacts and joints conduct, nothing else does. */
function bare(circuit: Circuit): Operating {
	let point = cache.get(circuit);
	if (point === undefined) {
		const rest = circuit.standingOf(new Map(), "loom alone");
		const siemens = rest.siemens.map((g, k) => (isLoom(circuit, k) ? g : 0));
		const emf = new Float64Array(siemens.length);
		const standing: Standing = { condition: rest.condition, siemens, emf, automata: [] };
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
	const a = circuit.node(pinNode(from))!;
	const b = circuit.node(pinNode(to))!;
	return probeValue(bare(circuit), { kind: "ohms", a, b });
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

/**
 * Runs of conductor: what wires, joints, fuses and closed contacts join, and the points at their ends where a meter
 * can be put.
 */
import { type Circuit, pinNode, REFERENCE, type Standing } from "../circuit/index.js";
import { wiresAtContact } from "../loom/index.js";
import { forbidden } from "../readings/index.js";

export interface Run {
	/** All contacts that a meter may be put to, in the order of a walk along the run. */
	readonly contacts: readonly string[];
	/** Those of them at which the run ends. */
	readonly ends: readonly string[];
}

/** Devices that pass a conductor on, by kind, but for elements that are loads. All others are loads or sensors. */
const PASSES: Readonly<Record<string, readonly string[]>> = { fuse: [], switch: [], relay: ["coil"] };

/** Contacts that a meter may be put to: wired, and of no circuit that is never measured. */
export function probePoints(circuit: Circuit): string[] {
	const { loom } = circuit;
	return [...loom.contacts.keys()].filter(
		(id) => wiresAtContact(loom, id).length > 0 && forbidden(loom, id) === undefined,
	);
}

/** Every run of the loom as it stands. Cost O(nodes + branches). */
export function runsOf(circuit: Circuit, { siemens }: Standing): Run[] {
	const { loom, branches, nodes } = circuit;
	const ground = nodes.length;
	const at = (node: number) => (node === REFERENCE ? ground : node);
	const next: number[][] = Array.from({ length: ground + 1 }, () => []);
	branches.forEach(({ a, b, owner }, k) => {
		const loads = owner.what === "device" ? PASSES[loom.parts.get(owner.id)?.kind ?? ""] : [];
		const conducts = siemens[k]! > 0 && loads !== undefined && !loads.includes(owner.element);
		if (!conducts) return;
		next[at(a)]!.push(at(b));
		next[at(b)]!.push(at(a));
	});
	const points = new Map(probePoints(circuit).map((id) => [circuit.node(id)!, id]));
	const isEnd = (node: number, id: string): boolean => {
		const ways = next[node]!;
		if (ways.length === 1) return true;
		const pin = circuit.node(pinNode(id));
		return ways.length === 2 && pin !== undefined && ways.includes(pin) && next[pin]!.length === 1;
	};
	const seen = new Uint8Array(ground + 1);
	const runs: Run[] = [];
	for (let start = ground; start >= 0; start--) {
		if (seen[start] === 1) continue;
		const contacts: string[] = [];
		const ends: string[] = [];
		const stack = [start];
		while (stack.length > 0) {
			const node = stack.pop()!;
			if (seen[node] === 1) continue;
			seen[node] = 1;
			const id = points.get(node);
			if (id !== undefined) {
				contacts.push(id);
				if (isEnd(node, id)) ends.push(id);
			}
			for (const to of next[node]!) if (seen[to] === 0) stack.push(to);
		}
		if (contacts.length > 0) runs.push({ contacts, ends });
	}
	return runs;
}

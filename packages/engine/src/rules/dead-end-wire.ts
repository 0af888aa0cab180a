/** A wire must lead from something to something. */
import type { Circuit } from "../circuit/index.js";
import { wireEndNode } from "../circuit/index.js";
import { type Contact, otherHalf, type Wire } from "../loom/index.js";
import { pinOf } from "./support/feeds.js";
import { finding } from "./support/finding.js";
import { isLoom, isThere, netAt, netOf } from "./support/nets.js";
import { namesAlong, reach } from "./support/ways.js";
import { contactText, list, wireText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "dead-end-wire";

/**
 * Wires that are joined, through splices and mated connectors, to fewer than two pins of parts or ground points.
 * Wires stowed on purpose are left alone, and bare ends are another rule's.
 */
export const deadEndWire: Rule = {
	id,
	title: "No wire leads nowhere",
	source: "a conductor joins at least two pins",
	check(circuit) {
		const ends = endsByNet(circuit);
		const groups = new Map<number, Wire[]>();
		for (const wire of circuit.loom.wires.values()) {
			const net = netOf(circuit, circuit.node(wireEndNode(wire.id, "from"))!);
			groups.set(net, [...(groups.get(net) ?? []), wire]);
		}
		return [...groups].flatMap(([net, wires]) => {
			const known = ends.get(net) ?? [];
			const loose = wires.some((wire) => wire.from.at === "loose" || wire.to.at === "loose");
			return known.length < 2 && !loose ? [report(circuit, wires, known)] : [];
		});
	},
};

/** Pins of parts and ground points on each net. A cavity of an in-line connector is none. */
function endsByNet(circuit: Circuit): Map<number, string[]> {
	const ends = new Map<number, string[]>();
	const put = (net: number, name: string) => ends.set(net, [...(ends.get(net) ?? []), name]);
	for (const contact of circuit.loom.contacts.values())
		if (isEnd(circuit, contact)) put(netAt(circuit, contact.id), contact.id);
	for (const joint of circuit.loom.joints.values())
		if (joint.kind === "ground") {
			const node = circuit.node(joint.id);
			if (node !== undefined) put(netOf(circuit, node), joint.id);
		}
	return ends;
}

function isEnd(circuit: Circuit, contact: Contact): boolean {
	const inLine = circuit.loom.parts.get(contact.part)?.kind === "connector";
	return !inLine || otherHalf(circuit.loom, contact) === undefined;
}

function report(circuit: Circuit, wires: readonly Wire[], known: readonly string[]): Finding {
	const { loom } = circuit;
	const [from] = known;
	const contact = loom.contacts.get(from ?? "");
	const start = contact ? pinOf(circuit, contact) : circuit.node(from ?? wireEndNode(wires[0]!.id, "from"))!;
	const ways = reach(circuit, [start], (k) => isLoom(circuit, k) && isThere(circuit, k));
	const path = namesAlong(circuit, ways.wayTo(ways.nodes.at(-1)!));
	const last = path.findLast((name) => loom.contacts.has(name) || loom.joints.has(name));
	return finding(circuit, id, "warn", {
		where: list(wires.map((wire) => wireText(loom, wire.id))),
		why: from
			? `It hangs at ${contactText(loom, from)} but leads to nothing else: it ends at ${last ? contactText(loom, last) : from}.`
			: "It is joined to no part at either end.",
		mend: "Run it on to where it belongs, or isolate and stow it.",
		path,
	});
}

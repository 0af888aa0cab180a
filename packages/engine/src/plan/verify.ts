/** Whether a recipe does what was wanted: each circuit conducts, and nothing else was joined on the way. */
import { Circuit, operate, probeValue } from "../circuit/index.js";
import type { Loom } from "../loom/index.js";
import { loomAs } from "../recipe/index.js";
import { type Net, Nets } from "./nets.js";
import type { Situation } from "./situation.js";
import type { WantedCircuit } from "./types.js";

export interface Check {
	readonly circuit: string;
	/** What the circuit was found joined to; empty where it is not. */
	readonly reached: string;
	/** Ohms from its contact to there, everything unplugged from the battery; undefined: open. */
	readonly ohms: number | undefined;
	/** Contacts joined to it that were neither joined as delivered nor wanted. */
	readonly strays: readonly string[];
}

/** @param loom after the recipe */
export function verify(at: Situation, loom: Loom, circuits: readonly WantedCircuit[]): Check[] {
	const after = new Nets(loom);
	const groups = wantedGroups(at, after, circuits);
	const circuit = new Circuit(loomAs(loom, "converted"));
	const batteries = [...loom.parts.values()].filter(({ kind }) => kind === "battery");
	const off = circuit.standingOf(new Map(batteries.map(({ id }) => [id, "off"] as const)), "battery off");
	const point = operate(circuit, off, { dead: true });
	return circuits.map((wanted) => {
		const net = after.ofContact(wanted.from);
		const reached = net === undefined ? "" : destinationIn(at, net, wanted);
		const [a, b] = [circuit.node(wanted.from), circuit.node(reached)];
		const ohms = a === undefined || b === undefined ? Number.NaN : probeValue(point, { kind: "ohms", a, b });
		const own = groups.get(wanted.from);
		const strays = (net?.contacts ?? []).filter((id) => groups.get(id) !== own);
		return { circuit: wanted.target, reached, ohms: Number.isNaN(ohms) ? undefined : ohms, strays };
	});
}

function destinationIn(at: Situation, net: Net, { from, to }: WantedCircuit): string {
	const has = (ids: Iterable<string>) =>
		[...ids].find((id) => id !== from && net.contacts.includes(id)) ?? "";
	if (to.at === "contact") return has([to.name]);
	if (to.at === "joint") return net.joints.includes(to.name) ? to.name : "";
	if (to.at.endsWith("ground")) return net.grounds[0] ?? "";
	if (to.at === "function")
		return has(
			at.base.functions
				.filter((need) => need.function === to.name && need.low !== undefined)
				.map(({ contact }) => contact),
		);
	return has(to.at === "switched feed" ? at.switched : at.permanent);
}

/** Which contacts and joints may hang together: as delivered once parts have gone and come, and as wanted. */
function wantedGroups(at: Situation, after: Nets, circuits: readonly WantedCircuit[]): Map<string, string> {
	const group = new Map<string, string>();
	for (const net of at.nets.all)
		for (const id of [...net.contacts, ...net.joints])
			group.set(id, net.grounds.length > 0 ? "ground" : net.id);
	const unite = (one: string | undefined, other: string | undefined) => {
		if (one === undefined || other === undefined || one === other) return;
		for (const [id, name] of group) if (name === other) group.set(id, one);
	};
	for (const wanted of circuits) {
		const net = after.ofContact(wanted.from);
		if (wanted.to.at.endsWith("ground")) unite("ground", group.get(wanted.from));
		else if (wanted.to.at === "joint") unite(group.get(wanted.from), group.get(wanted.to.name));
		else if (net) unite(group.get(wanted.from), group.get(destinationIn(at, net, wanted)));
	}
	return group;
}

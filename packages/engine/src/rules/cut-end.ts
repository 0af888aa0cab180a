/** A cut wire end must be isolated; one that can be live must be isolated before the battery goes on. */
import { type Circuit, type Operating, separated, voltsAt, wireEndNode } from "../circuit/index.js";
import { endName, type Wire } from "../loom/index.js";
import { pinOf, supplyPosts } from "./support/feeds.js";
import { finding } from "./support/finding.js";
import { groundNets, isLoom, isThere, netOf } from "./support/nets.js";
import { conditionsOf } from "./support/points.js";
import { namesAlong, type Passes, reach } from "./support/ways.js";
import { amount, contactText, wireText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "cut-end";

/** Above this against the body an end counts as live. */
export const LIVE_VOLTS = 1;

/**
 * Every listed condition is looked at, pulled fuses and unmated plugs included. An end that hangs on nothing has
 * no potential and is not live. A cavity left empty is right.
 */
export const cutEnd: Rule = {
	id,
	title: "Cut wire ends are isolated",
	source: `live above ${LIVE_VOLTS} V against the body: common practice, no source`,
	check(circuit) {
		return [...circuit.loom.wires.values()].flatMap((wire) => {
			const bare = (["from", "to"] as const).filter((side) => {
				const end = wire[side];
				return end.at === "loose" && !end.insulated;
			});
			return bare.length > 0 ? [report(circuit, wire, bare)] : [];
		});
	},
};

interface Live {
	readonly point: Operating;
	readonly condition: string;
	readonly volts: number;
}

/** The condition in which the end is farthest from the body's potential. */
function liveAt(circuit: Circuit, node: number): Live | undefined {
	let worst: Live | undefined;
	for (const { condition, point } of conditionsOf(circuit).settled) {
		if (separated(point, node, -1)) continue;
		const volts = voltsAt(point.volts, node);
		if (Math.abs(volts) > Math.max(LIVE_VOLTS, Math.abs(worst?.volts ?? 0)))
			worst = { point, condition, volts };
	}
	return worst;
}

function report(circuit: Circuit, wire: Wire, bare: readonly ("from" | "to")[]): Finding {
	const { loom } = circuit;
	// Both ends of one wire are one conductor: either shows whether it is live.
	const node = circuit.node(wireEndNode(wire.id, bare[0]!))!;
	const live = liveAt(circuit, node);
	const far = endName(wire[bare[0] === "from" ? "to" : "from"]);
	const hangs = far === "" ? "loose at both ends" : `its other end is at ${contactText(loom, far)}`;
	const ways = reach(circuit, [node], (k) => isLoom(circuit, k) && isThere(circuit, k));
	return finding(circuit, id, live ? "stop" : "warn", {
		where: `${wireText(loom, wire.id)}, ${bare.length === 2 ? "two cut ends" : "cut end"}; ${hangs}`,
		why: live
			? `It stands bare and carries ${amount(live.volts, "V")} in '${live.condition}'. It can short to the body or to a neighbour.`
			: "It stands bare. It is dead in every listed condition, but it can touch live metal or take up water.",
		mend: `Isolate ${wire.id} where it is cut with a sealed sleeve and tie it back, or take the wire out.`,
		path: live
			? [...fedBy(live.point, node), wire.id]
			: [...namesAlong(circuit, ways.wayTo(ways.nodes.at(-1)!).toReversed()), wire.id],
	});
}

/** The shortest conducting way from a plus post to the end, ground left out; the end itself draws no current. */
function fedBy(point: Operating, node: number): string[] {
	const { circuit } = point;
	const grounds = groundNets(circuit);
	const passes: Passes = (branch, to) =>
		point.siemens[branch]! > 0 && to >= 0 && !grounds.has(netOf(circuit, to));
	const ways = reach(circuit, [node], passes);
	const post = supplyPosts(circuit).find((plus) => ways.has(pinOf(circuit, plus)));
	return post === undefined ? [] : namesAlong(circuit, ways.wayTo(pinOf(circuit, post)).toReversed());
}

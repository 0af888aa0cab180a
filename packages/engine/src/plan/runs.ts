/** Leads that lead nowhere any more, and can carry another circuit from one of their ends to another. */
import type { Wire } from "../loom/index.js";
import type { Detachment } from "./detachments.js";
import { detached, type Point } from "./leg.js";
import type { Net } from "./nets.js";
import type { Spot } from "./places.js";
import {
	bareEnds,
	isRestraint,
	onlyContact,
	type Situation,
	spotOfLoose,
	untouchable,
	wholeLead,
} from "./situation.js";
import type { Step } from "./types.js";

/** A run from one point to another. */
export interface Run {
	readonly from: Point;
	readonly to: Point;
	/** Bare ends that it takes up. */
	readonly ends: readonly { readonly wire: string; readonly of: number }[];
	/** Smallest cross-section between them. */
	readonly mm2: number;
	/** Pairs that its wires are twisted into. */
	readonly pairs: string;
	/** Work before it is free. */
	readonly steps: readonly Step[];
	/**
	 * Of a single wire: the end that this work frees. It comes after the other end is joined, since a step
	 * works on the one loose end of a wire.
	 */
	readonly freed: "from" | "to" | undefined;
	readonly uses: readonly string[];
	readonly needs: readonly string[];
	readonly text: string;
}

interface RunEnd {
	readonly wire: string;
	readonly like: Wire;
	readonly spot: Spot;
	/** Bare ends that this wire has once the run is free. */
	readonly of: number;
}

export function runsOf(at: Situation, detachments: readonly Detachment[]): Run[] {
	return [
		...at.nets.all.flatMap((net) => deadRuns(at, net)),
		...detachments.flatMap((one) => freedRuns(at, one)),
		...spareCavities(at),
	];
}

/** Cavities of in-line connectors with no wire in either half: a way through a wall for two new wires. */
function spareCavities(at: Situation): Run[] {
	const { base, nets, places } = at;
	const spare = [...base.contacts.values()].filter(
		({ id }) => nets.isInLine(id) && nets.ofContact(id)?.wires.length === 0 && !isRestraint(at, id),
	);
	return spare.flatMap((one) =>
		spare
			.filter((other) => other.part === one.part && other.cavity === one.cavity && other.id !== one.id)
			.map((other): Run => {
				const point = (contact: string): Point => ({
					attach: { by: "cavity", contact },
					spot: places.spotOfContact(contact),
				});
				return {
					from: point(one.id),
					to: point(other.id),
					ends: [],
					mm2: Number.POSITIVE_INFINITY,
					pairs: "",
					steps: [],
					freed: undefined,
					uses: [`cavity ${one.part} ${one.cavity}`],
					needs: [],
					text: `spare cavity ${one.cavity} of ${one.part}`,
				};
			}),
	);
}

/** Of a net with no device left on it, or one whose last device does not need it. */
function deadRuns(at: Situation, net: Net): Run[] {
	if (net.grounds.length > 0 || net.loose.length === 0 || net.wires.some(untouchable)) return [];
	if (net.joints.some((id) => at.wanted.has(id))) return [];
	if (net.contacts.length === 0) {
		const ends = looseEnds(at, net);
		return pairsOf(at, net, ends, { steps: [], uses: [`lead ${net.id}`], needs: [] });
	}
	const contact = onlyContact(net);
	// A splice on it could be joined to by any number of circuits: such a lead is no free one.
	if (contact === undefined || net.joints.length > 0) return [];
	if (at.wanted.has(contact) || isRestraint(at, contact)) return [];
	const here = net.wires.filter(({ from, to }) =>
		[from, to].some((end) => end.at === "contact" && end.contact === contact),
	);
	const [like] = here;
	if (like === undefined || here.length > 1) return [];
	const spot = at.places.spotOfContact(contact);
	const { cut } = detached(like, contact, undefined, spot.place);
	const more = { steps: [cut], uses: wholeLead(net, contact), needs: [] };
	// A wire with no bare end so far need not be isolated: taking up the end that is freed saves nothing.
	const bare = bareEnds(at, like.id);
	const freed = { wire: like.id, like, spot, of: bare === 0 ? Number.POSITIVE_INFINITY : bare + 1 };
	const ends = looseEnds(at, net).map((end) => (end.wire === like.id ? { ...end, of: end.of + 1 } : end));
	return pairsOf(at, net, [freed, ...ends], more);
}

/** What is left of a wanted contact's lead once it is parted from it. */
function freedRuns(at: Situation, { facility, net, free, like, spot }: Detachment): Run[] {
	const of = bareEnds(at, like.id) + 1;
	const ends = looseEnds(at, net).map((end) => (end.wire === like.id ? { ...end, wire: free, of } : end));
	const parted = { wire: free, like, spot, of };
	const more = { steps: [], uses: [`rest ${facility.id}`], needs: [facility.id] };
	return pairsOf(at, net, [parted, ...ends], more);
}

function looseEnds(at: Situation, net: Net): RunEnd[] {
	return net.loose.flatMap(({ wire, side }) => {
		const spot = spotOfLoose(at, { wire, side });
		const like = at.base.wires.get(wire)!;
		return spot.place === "" ? [] : [{ wire, like, spot, of: bareEnds(at, wire) }];
	});
}

function pairsOf(
	at: Situation,
	net: Net,
	ends: readonly RunEnd[],
	more: Pick<Run, "steps" | "uses" | "needs">,
): Run[] {
	const pairs = [...new Set(net.wires.map(({ pair }) => pair).filter((pair) => pair !== ""))]
		.sort()
		.join(" ");
	return ends.flatMap((from) => {
		const sizes = at.nets.widest(net, from.like.id);
		return (
			ends
				// A wire that is loose at both ends by now cannot be said in steps: they name the wire, not the end.
				.filter((to) => to !== from && (to.wire !== from.wire || more.steps.length > 0))
				.map((to) => ({
					from: pointOf(from),
					to: pointOf(to),
					ends: [from, to],
					mm2: sizes.get(to.like.id) ?? 0,
					pairs,
					freed: from.wire !== to.wire ? undefined : from === ends[0] ? "from" : "to",
					text: `free lead ${from.wire === to.wire ? from.wire : `${from.wire} to ${to.wire}`}`,
					...more,
				}))
		);
	});
}

const pointOf = ({ wire, like, spot }: RunEnd): Point => ({ attach: { by: "bare", wire, like }, spot });

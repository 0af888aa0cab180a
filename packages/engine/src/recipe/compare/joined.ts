import { type Loom, type Wire, type WireEnd, wiresAtContact, wiresAtJoint } from "../../loom/index.js";
import type { Side } from "../touched.js";
import { endText, sidesAt } from "../wire-ends.js";
import { naturalOrder } from "./natural.js";

/** Where a wire leads in the end: a contact, ground point, bar or loose end, splices followed through. */
export interface Reach {
	/** A contact's or joint's name, or `a bare end`, `a stowed end`. */
	readonly place: string;
	readonly loose: boolean;
	/** Along the wires, the shortest way. */
	readonly metres: number;
	/** Splices passed on the way. */
	readonly splices: readonly string[];
}

/** One wire as seen from the place where one of its ends is. */
export interface Joined {
	readonly wire: Wire;
	readonly side: Side;
	/** The wire's other end. */
	readonly far: WireEnd;
	/** In natural order of place. One entry where the wire ends at no splice. */
	readonly reaches: readonly Reach[];
}

/** A loom asked from its places: which wires end there and where they lead. */
export class Places {
	readonly loom: Loom;

	constructor(loom: Loom) {
		this.loom = loom;
	}

	/** In natural order of the wires' names, so that the order of rows does not matter. */
	atContact(id: string): Joined[] {
		const wires = [...new Set(wiresAtContact(this.loom, id))];
		wires.sort((x, y) => naturalOrder(x.id, y.id));
		return wires.flatMap((wire) => sidesAt(wire, "contact", id).map((side) => this.joined(wire, side)));
	}

	atJoint(id: string): (readonly [Wire, Side])[] {
		const wires = new Set(wiresAtJoint(this.loom, id));
		return [...wires].flatMap((wire) => sidesAt(wire, "joint", id).map((side) => [wire, side] as const));
	}

	joined(wire: Wire, side: Side): Joined {
		const far = wire[other(side)];
		return { wire, side, far, reaches: this.#reach(wire, side) };
	}

	/** Breadth first through splices, nearest first. Cost: O(s^2) of the s wires of the spliced group. */
	#reach(start: Wire, side: Side): Reach[] {
		const found: Reach[] = [];
		const passed = new Set<string>();
		const open = [{ end: start[other(side)], wire: start, metres: start.metres, splices: [] as string[] }];
		while (open.length > 0) {
			open.sort((a, b) => a.metres - b.metres);
			const { end, wire, metres, splices } = open.shift()!;
			const splice =
				end.at === "joint" && this.loom.joints.get(end.joint)?.kind === "splice" ? end.joint : "";
			if (splice === "") {
				found.push({ place: endText(end), loose: end.at === "loose", metres, splices });
				continue;
			}
			if (passed.has(splice)) continue;
			passed.add(splice);
			for (const [next, at] of this.atJoint(splice))
				if (next !== wire)
					open.push({
						end: next[other(at)],
						wire: next,
						metres: metres + next.metres,
						splices: [...splices, splice],
					});
		}
		return found.sort((a, b) => naturalOrder(a.place, b.place) || a.metres - b.metres);
	}
}

export const other = (side: Side): Side => (side === "from" ? "to" : "from");

/** The wire itself and where its far end is, as one key. Direction does not count. */
export function wireKey({ wire, far }: Joined): string {
	const { from: _from, to: _to, ...rest } = wire;
	return JSON.stringify([Object.entries(rest).sort(([a], [b]) => (a < b ? -1 : 1)), endText(far)]);
}

/** All that can be told of a joined wire, as one key: equal keys, no change. */
export const joinedKey = (joined: Joined): string =>
	JSON.stringify([wireKey(joined), joined.reaches.map((reach) => [reach.place, reach.metres.toFixed(6)])]);

/** `W5 (BKWH 0.75 mm2, 1.2 m) by splice S1 to ECU.B7, 2 x a bare end`. */
export function joinedText({ wire, far, reaches }: Joined): string {
	const splices = [...new Set(reaches.flatMap((reach) => reach.splices))];
	const colour = wire.colours.length > 0 ? `${wire.colours.join("")} ` : "";
	const by =
		splices.length > 0 ? ` by ${splices.length > 1 ? "splices" : "splice"} ${splices.join(", ")}` : "";
	const places = new Map<string, number>();
	for (const { place } of reaches) places.set(place, (places.get(place) ?? 0) + 1);
	const to = [...places].map(([place, times]) => (times > 1 ? `${times} x ${place}` : place));
	return `${wire.id} (${colour}${wire.mm2} mm2, ${wire.metres} m)${by} to ${to.join(", ") || endText(far)}`;
}

/** Leads of wanted contacts parted from them, so that the rest of the lead is free. */
import type { Wire } from "../loom/index.js";
import { detached } from "./leg.js";
import type { Net } from "./nets.js";
import type { Spot } from "./places.js";
import { bareEnds, isRestraint, onlyContact, type Situation, untouchable } from "./situation.js";
import type { Facility, Step } from "./types.js";

/** One way to part the lead of a wanted contact from it, so that the rest of the lead is free for another circuit. */
export interface Detachment {
	readonly facility: Facility;
	readonly contact: string;
	readonly net: Net;
	/** The piece that stays at the contact; empty where the terminal comes out. */
	readonly stays: string;
	/** The piece that is free. */
	readonly free: string;
	readonly like: Wire;
	readonly spot: Spot;
}

/** @param toward places of what the contacts are to be joined with */
export function detachmentsOf(
	at: Situation,
	contact: string,
	toward: readonly string[],
	price: (steps: readonly Step[]) => Pick<Facility, "own" | "shared">,
): Detachment[] {
	const net = at.nets.ofContact(contact);
	if (net === undefined || onlyContact(net) !== contact || isRestraint(at, contact)) return [];
	const here = net.wires.filter(({ from, to }) =>
		[from, to].some((end) => end.at === "contact" && end.contact === contact),
	);
	if (here.length !== 1 || net.wires.some(untouchable)) return [];
	const make = (like: Wire, cutAt: number | undefined, spot: Spot): Detachment => {
		const { stays, free, cut } = detached(like, contact, cutAt, spot.place);
		const id = cutAt === undefined ? `${like.id} out of ${contact}` : `${like.id} cut at ${cutAt} m`;
		const { own, shared } = price([cut]);
		// Each new loose piece must be isolated, unless a circuit takes it up.
		const more = (stays === "" ? 0 : 1) + (bareEnds(at, like.id) === 0 ? 1 : 0);
		const isolate = at.costs.work("isolate");
		const facility: Facility = {
			id,
			text: id,
			steps: [cut],
			own: {
				...own,
				minutes: own.minutes + more * isolate.minutes,
				material: own.material + more * isolate.material,
			},
			shared,
			uses: [`lead of ${contact}`],
		};
		return { facility, contact, net, stays, free, like, spot };
	};
	const found = [make(here[0]!, undefined, at.places.spotOfContact(contact))];
	for (const place of new Set(toward)) {
		const like = here[0]!;
		const along = like.metres >= 0.3 ? at.places.along(like, place) : undefined;
		if (along !== undefined) found.push(make(like, along.at, along.spot));
	}
	return found;
}

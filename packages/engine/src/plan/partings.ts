/**
 * Ways to part contacts that must not be joined any more, e.g. where a switch is to be put into a live line.
 *
 * Each is a cut in one of the wires that alone join the two; the proposal is made for each and the cheapest
 * taken. Offered for each pair: the terminals at both ends of the way, and where the way passes the places of
 * new contacts.
 */
import { endName, type Loom, type Wire } from "../loom/index.js";
import { step } from "./leg.js";
import { isBare, type Net, Nets, SIDES } from "./nets.js";
import type { Spot } from "./places.js";
import { isRestraint, type Parting, type Situation, untouchable } from "./situation.js";
import type { PlanTables, WantedParting } from "./types.js";

/** Cuts offered for one pair of contacts. */
const MOST_CUTS = 6;

interface Cut {
	readonly wire: string;
	readonly parting: Parting;
	/** Metres to the place that it was looked for from. */
	readonly leg: number;
}

/** @returns every combination, or which row cannot be done */
export function partingsOf(at: Situation, { partings, circuits }: PlanTables): Parting[] | WantedParting {
	const places = [...new Set(circuits.map(({ from }) => at.places.ofContact(from)))];
	let combined: { wires: string[]; parting: Parting }[] = [
		{ wires: [], parting: { steps: [], spots: new Map() } },
	];
	for (const row of partings) {
		const cuts = cutsOf(at, row, places);
		if (cuts === undefined) continue;
		if (cuts.length === 0) return row;
		combined = combined.flatMap(({ wires, parting }) =>
			cuts
				.filter(({ wire }) => !wires.includes(wire))
				.map((cut) => ({
					wires: [...wires, cut.wire],
					parting: {
						steps: [...parting.steps, ...cut.parting.steps],
						spots: new Map([...parting.spots, ...cut.parting.spots]),
					},
				})),
		);
	}
	return combined.map(({ parting }) => parting);
}

/** Cuts that part the two; undefined where they are apart already. */
function cutsOf(
	at: Situation,
	{ from, to, title, target }: WantedParting,
	places: readonly string[],
): Cut[] | undefined {
	const netOf = (nets: Nets, name: string): Net | undefined =>
		name.includes(".") ? nets.ofContact(name) : nets.ofJoint(name);
	const net = netOf(at.nets, from);
	if (net === undefined || net !== netOf(at.nets, to)) return undefined;
	const bridges = net.wires.filter((wire) => {
		if (untouchable(wire) || isBare(wire.from) || isBare(wire.to)) return false;
		const nets = new Nets(withoutWire(at.base, wire.id));
		return netOf(nets, from) !== netOf(nets, to);
	});
	const words = title || target;
	const cuts = bridges.flatMap((wire) => [
		...SIDES.flatMap((side) => unpinned(at, wire, side, words)),
		...places.flatMap((place) => cutNear(at, wire, place, words)),
	]);
	const seen = new Set<string>();
	const different = cuts.filter(({ parting }) => {
		const key = JSON.stringify(parting.steps);
		return !seen.has(key) && seen.add(key);
	});
	return different.sort((a, b) => a.leg - b.leg).slice(0, MOST_CUTS);
}

/** The terminal out of its cavity. */
function unpinned(at: Situation, wire: Wire, side: "from" | "to", words: string): Cut[] {
	const end = wire[side];
	if (end.at !== "contact" || isRestraint(at, end.contact)) return [];
	const spot = at.places.spotOfEnd(end);
	const cut = step("cut", `${words}: ${wire.id} out of ${endName(end)}`, {
		wire: wire.id,
		at: side,
		place: spot.place,
	});
	return [
		{ wire: wire.id, parting: { steps: [cut], spots: new Map([[`${wire.id} ${side}`, spot]]) }, leg: 0 },
	];
}

function cutNear(at: Situation, wire: Wire, place: string, words: string): Cut[] {
	const along = at.places.along(wire, place);
	if (along === undefined) return [];
	const tail = `${wire.id}+b`;
	const more = { wire: wire.id, at: { metres: along.at }, fresh: tail, place: along.spot.place };
	const spots = new Map<string, Spot>([
		[`${wire.id} to`, along.spot],
		[`${tail} from`, along.spot],
	]);
	return [
		{
			wire: wire.id,
			parting: { steps: [step("cut", `${words}: ${wire.id} cut`, more)], spots },
			leg: along.leg,
		},
	];
}

function withoutWire(loom: Loom, id: string): Loom {
	return { ...loom, wires: new Map([...loom.wires].filter(([name]) => name !== id)) };
}

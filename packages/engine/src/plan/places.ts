/**
 * How far apart two places are along the loom, and in which zone each lies.
 *
 * No drawing of the car is in the tables, but every wire says how far its two ends are apart along the
 * branches of the loom: the shortest way over them is where a new wire would be laid too.
 */
import type { Contact, Joint, Loom, NewParts, Wire, WireEnd } from "../loom/index.js";
import type { PlaceRow } from "./types.js";

/** A place in words, and the zone it lies in. */
export interface Spot {
	readonly place: string;
	readonly zone: string;
	/** Of a point along a wire: how far it is to places near it. Otherwise the spot is the place. */
	readonly anchors?: readonly (readonly [place: string, metres: number])[];
}

/** The place that a spot is nearest to, as the tables name it. */
export function anchorOf({ place, anchors }: Spot): string {
	return anchors === undefined ? place : anchors.reduce((best, next) => (next[1] < best[1] ? next : best))[0];
}

/** The point of a wire that is nearest to some place: metres from the wire's `from` end. */
export interface Along {
	readonly at: number;
	/** From there to that place. */
	readonly leg: number;
	readonly spot: Spot;
}

/** Nearer to a wire's end than this no cut is made: common practice, no source. */
const CLEAR_METRES = 0.1;

export class Places {
	readonly #loom: Loom;
	readonly #fresh: NewParts;
	readonly #rows: readonly PlaceRow[];
	readonly #ways = new Map<string, Map<string, number>>();
	readonly #from = new Map<string, ReadonlyMap<string, number>>();
	readonly #halves = new Map<string, string>();

	/** @param loom as delivered: with the parts that go, because their places stay */
	constructor(loom: Loom, fresh: NewParts, rows: readonly PlaceRow[]) {
		this.#loom = loom;
		this.#fresh = fresh;
		// The longest fitting words win.
		this.#rows = [...rows].sort((a, b) => b.place.length - a.place.length);
		for (const wire of loom.wires.values())
			this.#join(this.ofEnd(wire.from), this.ofEnd(wire.to), wire.metres);
		for (const { place, near, metres } of rows)
			if (near !== "" && metres !== undefined) this.#join(place, near, metres);
	}

	/** Metres along the loom; undefined where no wire leads from one to the other. */
	metres(one: string, other: string): number | undefined {
		if (one === "" || other === "") return undefined;
		if (one === other) return 0;
		let found = this.#from.get(one);
		if (found === undefined) {
			found = shortest(this.#ways, one);
			this.#from.set(one, found);
		}
		return found.get(other);
	}

	/** The point of a wire that is nearest to a place, the loom taken as a tree. */
	along(wire: Wire, place: string): Along | undefined {
		const a = this.metres(this.ofEnd(wire.from), place);
		const b = this.metres(this.ofEnd(wire.to), place);
		if (a === undefined || b === undefined || wire.metres <= 2 * CLEAR_METRES) return undefined;
		const exact = Math.min(Math.max((a + wire.metres - b) / 2, CLEAR_METRES), wire.metres - CLEAR_METRES);
		const at = Math.round(exact * 100) / 100;
		const leg = Math.max(0, (a + b - wire.metres) / 2);
		const near = at * 2 < wire.metres ? wire.from : wire.to;
		const anchors = [
			[this.ofEnd(wire.from), at],
			[this.ofEnd(wire.to), wire.metres - at],
			[place, leg],
		] as const;
		const { place: end, zone } = this.spotOfEnd(near);
		const words = leg < 0.3 && this.zone(place) === zone ? place : end;
		return { at, leg, spot: { place: words, zone, anchors } };
	}

	/** Metres between two spots along the loom; undefined where no wire leads from one to the other. */
	apart(a: Spot, b: Spot): number | undefined {
		let best: number | undefined;
		for (const [one, before] of a.anchors ?? [[a.place, 0]])
			for (const [other, after] of b.anchors ?? [[b.place, 0]]) {
				const between = this.metres(one as string, other as string);
				if (between === undefined) continue;
				const all = (before as number) + between + (after as number);
				if (best === undefined || all < best) best = all;
			}
		return best;
	}

	ofEnd(end: WireEnd): string {
		if (end.at === "contact") return this.ofContact(end.contact);
		return end.at === "joint" ? (this.joint(end.joint)?.place ?? "") : "";
	}

	ofContact(id: string): string {
		const contact = this.contact(id);
		if (contact === undefined) return "";
		return (this.#loom.parts.get(contact.part) ?? this.#fresh.parts.get(contact.part))?.place ?? "";
	}

	contact(id: string): Contact | undefined {
		return this.#loom.contacts.get(id) ?? this.#fresh.contacts.get(id);
	}

	joint(id: string): Joint | undefined {
		return this.#loom.joints.get(id) ?? this.#fresh.joints.get(id);
	}

	zone(place: string): string {
		const side = /, ([^,]+) side$/.exec(place)?.[1];
		if (side !== undefined && this.#rows.some(({ zone }) => zone === side)) return side;
		return this.#rows.find((row) => row.zone !== "" && place.startsWith(row.place))?.zone ?? "";
	}

	/** What the insulation of a wire between two places must stand; undefined where the tables do not say. */
	celsius(places: readonly string[]): number | undefined {
		const said = places.flatMap((place) => {
			const row = this.#rows.find((one) => one.celsius !== undefined && place.startsWith(one.place));
			return row?.celsius ?? [];
		});
		return said.length === 0 ? undefined : Math.max(...said);
	}

	spot(place: string): Spot {
		return { place, zone: this.zone(place) };
	}

	/** Of the half of an in-line connector: the zone to which most of its wires lead. */
	spotOfContact(id: string): Spot {
		const place = this.ofContact(id);
		const contact = this.contact(id);
		if (contact === undefined || this.#loom.parts.get(contact.part)?.kind !== "connector")
			return this.spot(place);
		const half = `${contact.part} ${contact.role}`;
		let zone = this.#halves.get(half);
		if (zone === undefined) {
			zone = this.#zoneOfHalf(contact);
			this.#halves.set(half, zone);
		}
		// Said in the words too, so that whoever reads them in a recipe knows the side of the wall.
		const words = zone === this.zone(place) || zone === "" ? place : `${place}, ${zone} side`;
		return { place: words, zone, anchors: [[place, 0]] };
	}

	spotOfEnd(end: WireEnd): Spot {
		return end.at === "contact" ? this.spotOfContact(end.contact) : this.spot(this.ofEnd(end));
	}

	#zoneOfHalf({ part, role }: Contact): string {
		const votes = new Map<string, number>();
		const isHalf = (end: WireEnd) => {
			const contact = end.at === "contact" ? this.#loom.contacts.get(end.contact) : undefined;
			return contact?.part === part && contact.role === role;
		};
		for (const { from, to } of this.#loom.wires.values()) {
			const far = isHalf(from) ? to : isHalf(to) ? from : undefined;
			if (far === undefined) continue;
			const zone = this.zone(this.ofEnd(far));
			votes.set(zone, (votes.get(zone) ?? 0) + 1);
		}
		return [...votes].sort((a, b) => b[1] - a[1])[0]?.[0] ?? "";
	}

	#join(one: string, other: string, metres: number): void {
		if (one === "" || other === "" || one === other) return;
		for (const [a, b] of [
			[one, other],
			[other, one],
		] as const) {
			const ways = this.#ways.get(a) ?? new Map<string, number>();
			ways.set(b, Math.min(ways.get(b) ?? Number.POSITIVE_INFINITY, metres));
			this.#ways.set(a, ways);
		}
	}
}

/** Dijkstra from one place; some hundred places, so the nearest open one is looked for in a list. */
function shortest(ways: ReadonlyMap<string, ReadonlyMap<string, number>>, from: string): Map<string, number> {
	const done = new Map<string, number>();
	const open = new Map([[from, 0]]);
	while (open.size > 0) {
		const [place, metres] = [...open].reduce((best, next) => (next[1] < best[1] ? next : best));
		open.delete(place);
		done.set(place, metres);
		for (const [next, far] of ways.get(place) ?? [])
			if (!done.has(next)) open.set(next, Math.min(open.get(next) ?? Number.POSITIVE_INFINITY, metres + far));
	}
	return done;
}

/** Where a circuit can be taken up on each of its two sides. */
import type { Contact, Joint, Wire } from "../loom/index.js";
import type { Detachment } from "./detachments.js";
import { type Attach, type Point, step } from "./leg.js";
import type { Net } from "./nets.js";
import type { Spot } from "./places.js";
import {
	bareEnds,
	isBolted,
	isRestraint,
	onlyContact,
	type Situation,
	spotOfLoose,
	untouchable,
	wholeLead,
} from "./situation.js";
import type { Step, WantedCircuit, Way } from "./types.js";

/** A point with what must be done, used and left alone for it. */
export interface Access extends Point {
	readonly way: Way;
	readonly steps: readonly Step[];
	readonly uses: readonly string[];
	readonly needs: readonly string[];
	readonly bars: readonly string[];
	/** Bare ends that are bare no more, and how many the wire has. */
	readonly ends: readonly { readonly wire: string; readonly of: number }[];
	readonly lies: string;
}

/** One side of a wanted circuit. */
export type SideOf =
	| { readonly at: "contact"; readonly contact: string }
	| { readonly at: "joint"; readonly joint: string }
	| { readonly at: "nets"; readonly nets: readonly Net[] }
	/** The metal that the ground point is bolted to; empty: any. */
	| { readonly at: "ground"; readonly metal: string };

const access = (way: Way, attach: Attach, spot: Spot, more: Partial<Access> = {}): Access => ({
	way,
	attach,
	spot,
	steps: [],
	uses: [],
	needs: [],
	bars: [],
	ends: [],
	lies: "pair" in attach ? "" : liesOf(attach, spot),
	...more,
});

function liesOf(attach: Attach, { place }: Spot): string {
	if ("like" in attach && attach.like.pair !== "") return attach.like.pair;
	return attach.by === "joint" ? place : "";
}

/** Splices, bars and taps offered on one net, the nearest ones. */
const MOST_OFFERED = 4;

/** Finds the points of both sides of all circuits. */
export class AccessFinder {
	readonly #at: Situation;
	/** Ways to part a lead from the only contact it still leads to, by the lead's net. */
	readonly #detachments: ReadonlyMap<string, readonly Detachment[]>;

	constructor(at: Situation, detachments: ReadonlyMap<string, readonly Detachment[]>) {
		this.#at = at;
		this.#detachments = detachments;
	}

	/** Points of one side. `toward`: the places of the other side, for which taps are sought. */
	of(side: SideOf, circuit: WantedCircuit, toward: readonly string[]): Access[] {
		if (side.at === "contact") return this.#ofContact(side.contact, circuit, toward);
		if (side.at === "ground") return this.#ofGround(circuit, side.metal);
		if (side.at === "nets") return side.nets.flatMap((net) => this.#ofNet(net, circuit, toward));
		const net = this.#at.nets.ofJoint(side.joint);
		const own = this.#jointPoint(side.joint);
		if (net === undefined) return own ? [own] : [];
		const rest = this.#ofNet(net, circuit, toward, side.joint);
		return own ? [own, ...rest.filter(({ attach }) => attach.by !== "joint")] : rest;
	}

	#ofContact(id: string, circuit: WantedCircuit, toward: readonly string[]): Access[] {
		const { nets, places } = this.#at;
		const spot = places.spotOfContact(id);
		const cavity: Attach = { by: "cavity", contact: id };
		const net = nets.ofContact(id);
		if (net === undefined || net.wires.length === 0)
			return [
				access("new", cavity, spot, { uses: isBolted(this.#at, id) ? [] : [`cavity ${id}`] }),
				...this.#moves(id, circuit),
			];
		const parted = this.#detachments.get(net.id) ?? [];
		const bars = parted.map(({ facility }) => facility.id);
		// A lead that leads nowhere else is extended or cut, not tapped: a tap would leave a live end behind it.
		const single = onlyContact(net) === id;
		const found = this.#ofNet(net, circuit, single ? [] : toward, id).map(
			(one): Access => ({ ...one, bars }),
		);
		if (isBolted(this.#at, id)) found.push(access("new", cavity, spot, { bars }));
		for (const { facility, stays, like, spot: there, contact } of parted) {
			if (contact !== id || like.mm2 < circuit.mm2) continue;
			const needs = [facility.id];
			if (stays === "") found.push(access("new", cavity, spot, { needs, uses: [`cavity ${id}`] }));
			else
				found.push(
					access("extend", { by: "bare", wire: stays, like }, there, {
						needs,
						ends: [{ wire: stays, of: 1 }],
						uses: [`end ${stays}`],
					}),
				);
		}
		return found;
	}

	/** Loose ends, splices and taps of a net. @param reach the contact or joint that must be reached with the full size */
	#ofNet(net: Net, circuit: WantedCircuit, toward: readonly string[], reach?: string): Access[] {
		const ends = net.loose.flatMap(({ wire: id, side }) => {
			const like = this.#at.base.wires.get(id)!;
			if (untouchable(like) || !this.#pairAllows(like, circuit) || !this.#wideEnough(net, id, circuit, reach))
				return [];
			const spot = spotOfLoose(this.#at, { wire: id, side });
			if (spot.place === "") return [];
			const of = bareEnds(this.#at, id);
			return [
				access("extend", { by: "bare", wire: id, like }, spot, {
					uses: [`end ${id} ${side}`],
					ends: [{ wire: id, of }],
				}),
			];
		});
		if (circuit.mostJoints === 0) return ends;
		const joints = net.joints.flatMap((id) => {
			const wide = net.wires.some(
				(wire) =>
					[wire.from, wire.to].some((end) => end.at === "joint" && end.joint === id) &&
					this.#wideEnough(net, wire.id, circuit, reach),
			);
			const point = wide ? this.#jointPoint(id) : undefined;
			return point ? [point] : [];
		});
		return [...ends, ...this.#nearest(joints, toward), ...this.#taps(net, circuit, toward, reach)];
	}

	#nearest(found: readonly Access[], toward: readonly string[]): Access[] {
		const far = ({ spot }: Access) =>
			Math.min(
				...toward.map(
					(place) => this.#at.places.apart(spot, { place, zone: "" }) ?? Number.POSITIVE_INFINITY,
				),
			);
		return [...found].sort((a, b) => far(a) - far(b)).slice(0, MOST_OFFERED);
	}

	#taps(net: Net, circuit: WantedCircuit, toward: readonly string[], reach?: string): Access[] {
		const found = toward.flatMap((place) =>
			net.wires.flatMap((like) => {
				if (untouchable(like) || !this.#pairAllows(like, circuit)) return [];
				// Rails and straps are no wires to tap: common practice, no source.
				if (like.metres < 0.3 || like.from.at === "loose" || like.to.at === "loose") return [];
				if (!this.#wideEnough(net, like.id, circuit, reach)) return [];
				const along = this.#at.places.along(like, place);
				if (along === undefined) return [];
				const attach: Attach = { by: "tap", wire: like.id, like, at: along.at };
				return [
					{ point: access("join", attach, along.spot, { uses: [`run of ${like.id}`] }), leg: along.leg },
				];
			}),
		);
		return found
			.sort((a, b) => a.leg - b.leg)
			.slice(0, MOST_OFFERED)
			.map(({ point }) => point);
	}

	#ofGround(circuit: WantedCircuit, metal: string): Access[] {
		const { nets, fresh, mayFit, base } = this.#at;
		const fits = (joint: Joint | undefined) =>
			joint?.kind === "ground" && (metal === "" || joint.metal === metal);
		const grounds = [...base.joints.values()].filter(fits);
		const points = grounds.flatMap(({ id }) => this.#jointPoint(id) ?? []);
		const made = mayFit
			.filter(({ part }) => fits(fresh.joints.get(part)))
			.map(({ part }) => ({ ...this.#jointPoint(part)!, needs: [`fit ${part}`] }));
		const leads = nets.all
			.filter((net) => net.grounds.length > 0 && net.grounds.every((id) => fits(base.joints.get(id))))
			.flatMap((net) => this.#ofNet({ ...net, joints: [] }, circuit, [], net.grounds[0]))
			.filter(({ attach }) => attach.by === "bare");
		return [...points, ...made, ...leads];
	}

	#jointPoint(id: string): Access | undefined {
		const { places } = this.#at;
		const joint = places.joint(id);
		if (joint === undefined || joint.marks.includes("no joints")) return undefined;
		const spot = places.spot(joint.place);
		return access(joint.kind === "splice" ? "join" : "new", { by: "joint", joint: id }, spot);
	}

	/** Leads that can go over from another cavity of the same housing. */
	#moves(id: string, circuit: WantedCircuit): Access[] {
		const { base, nets, places } = this.#at;
		const contact = places.contact(id);
		if (contact === undefined || contact.connector === "" || isRestraint(this.#at, id)) return [];
		const same = [...base.contacts.values()].filter(
			(other) => other.id !== id && sharesHousing(contact, other),
		);
		return same.flatMap(({ id: from }) => {
			const net = nets.ofContact(from);
			if (net === undefined || onlyContact(net) !== from || this.#at.wanted.has(from)) return [];
			if (net.joints.length > 0) return [];
			return this.#ofNet(net, circuit, [], from)
				.filter(({ attach }) => attach.by === "bare")
				.map((one) => ({
					...one,
					way: "move" as const,
					steps: [step("move terminal", `${from} to ${id}`, { from, to: id, place: places.ofContact(id) })],
					uses: [...new Set([...wholeLead(net, from), `cavity ${id}`])],
				}));
		});
	}

	#wideEnough(net: Net, wire: string, { mm2 }: WantedCircuit, reach?: string): boolean {
		const sizes = this.#at.nets.widest(net, wire);
		if (reach === undefined) return (sizes.get(wire) ?? 0) >= mm2;
		return net.wires.some(({ id, from, to }) => {
			const there = [from, to].some(
				(end) => (end.at === "contact" ? end.contact : end.at === "joint" ? end.joint : "") === reach,
			);
			return there && (sizes.get(id) ?? 0) >= mm2;
		});
	}

	/** A wire of a twisted pair is only for a pair. */
	#pairAllows(wire: Wire, circuit: WantedCircuit): boolean {
		return wire.pair === "" || circuit.pair !== "";
	}
}

const sharesHousing = (a: Contact, b: Contact): boolean =>
	a.connector === b.connector && (a.connector !== a.part || a.role === b.role);

import type { Contact, Joint, Loom, Part, Wire, WireEnd } from "../loom/index.js";
import { Overlay } from "./overlay.js";
import { endKey, type Side, type Touched, TouchLog } from "./touched.js";
import { bare, sidesAt, tidyMetres } from "./wire-ends.js";

const endId = (end: WireEnd): string | undefined =>
	end.at === "contact" ? `contact ${end.contact}` : end.at === "joint" ? `joint ${end.joint}` : undefined;

/**
 * A loom on the bench: what the steps work on. Copy on write, so the loom it began with is
 * never changed. A step's work is staged; `keep` makes it part of the draft, `drop`
 * forgets it. `wiresAt` and `wiresOn` tell the state before the step.
 */
export class Draft {
	parts: Overlay<Part>;
	contacts: Overlay<Contact>;
	wires: Overlay<Wire>;
	joints: Overlay<Joint>;
	/** Of each name that a step of the recipe makes, that step; undefined: misfits are told to nobody. */
	readonly makers: ReadonlyMap<string, string> | undefined;
	readonly #base: Loom;
	readonly #touches = new TouchLog();
	/** Wires by place, built at the first question and kept up by `keep`. */
	#byPlace: Map<string, readonly string[]> | undefined;

	/** @param makers for telling what would be right; looking for it is worth while only where somebody is told */
	constructor(base: Loom, makers?: ReadonlyMap<string, string>) {
		this.#base = base;
		this.makers = makers;
		this.parts = new Overlay(base.parts);
		this.contacts = new Overlay(base.contacts);
		this.wires = new Overlay(base.wires);
		this.joints = new Overlay(base.joints);
	}

	/** Another that begins with what is kept here, as if nothing had been worked on yet. Its misfits are not told. */
	fork(): Draft {
		const other = new Draft(this.#base);
		other.parts = this.parts.fork();
		other.contacts = this.contacts.fork();
		other.wires = this.wires.fork();
		other.joints = this.joints.fork();
		other.#byPlace = new Map(this.#places());
		return other;
	}

	/** Wires that end at a contact, in the order of their names' first appearance there. */
	wiresAt(contact: string): Wire[] {
		const found = this.#places().get(`contact ${contact}`) ?? [];
		return found.flatMap((id) => this.wires.get(id) ?? []);
	}

	/** Contacts of a part, in table order. Cost: O(contacts). */
	contactsOf(part: string): Contact[] {
		return [...this.contacts.kept().values()].filter((contact) => contact.part === part);
	}

	/** Contacts whose loom terminals sit in a connector's housing. Cost: O(contacts). */
	contactsHeldBy(connector: string): Contact[] {
		return [...this.contacts.kept().values()].filter((contact) => contact.connector === connector);
	}

	addWire(wire: Wire): void {
		this.wires.put(wire.id, { ...wire, metres: tidyMetres(wire.metres) });
		this.#touches.touch("wires", wire.id);
		this.#touchEnd(wire, "from");
		this.#touchEnd(wire, "to");
	}

	/** Takes one end of a wire elsewhere: both places and that end count as worked on. */
	moveEnd(wire: Wire, side: Side, end: WireEnd): void {
		const now = this.wires.get(wire.id) ?? wire;
		const moved = { ...now, [side]: end };
		this.wires.put(wire.id, moved);
		this.#touches.touch("wires", wire.id);
		this.#touchPlace(now[side]);
		this.#touchEnd(moved, side);
	}

	/**
	 * Parts a wire `metres` from its `from` end. It keeps its name up to there, the rest is
	 * called `tail`; both new ends go to `end`. The tail's far end is not worked on.
	 */
	split(wire: Wire, metres: number, tail: string, end: WireEnd): void {
		const near = { ...wire, to: end, metres: tidyMetres(metres) };
		const far = { ...wire, id: tail, from: end, metres: tidyMetres(wire.metres - metres) };
		this.wires.put(near.id, near);
		this.wires.put(far.id, far);
		this.#touches.inherit("wires", wire.id, tail, "share");
		this.#touches.inherit("ends", endKey(wire, "to"), endKey(tail, "to"), "move");
		this.#touches.touch("wires", wire.id);
		this.#touches.touch("wires", tail);
		this.#touchEnd(near, "to");
		this.#touchEnd(far, "from");
	}

	addJoint(joint: Joint): void {
		this.joints.put(joint.id, joint);
		this.#touches.touch("joints", joint.id);
	}

	/** A part with its contacts; plugging it in works on each of them. */
	addPart(part: Part, contacts: readonly Contact[]): void {
		this.parts.put(part.id, part);
		this.#touches.touch("parts", part.id);
		for (const contact of contacts) {
			this.contacts.put(contact.id, contact);
			this.#touchContact(contact.id);
		}
	}

	/** Takes a part and its contacts out; every wire end there is left bare. */
	removePart(part: string): void {
		for (const contact of this.contactsOf(part)) {
			this.#touchContact(contact.id);
			for (const wire of this.wiresAt(contact.id))
				for (const side of sidesAt(wire, "contact", contact.id)) this.moveEnd(wire, side, bare);
			this.contacts.remove(contact.id);
		}
		this.#touches.touch("parts", part);
		this.parts.remove(part);
	}

	keep(step: string): void {
		if (this.#byPlace !== undefined)
			for (const [id, wire] of this.wires.staged())
				this.#refile(this.#byPlace, this.wires.kept().get(id), wire);
		for (const table of [this.parts, this.contacts, this.wires, this.joints]) table.keep();
		this.#touches.keep(step);
	}

	drop(): void {
		for (const table of [this.parts, this.contacts, this.wires, this.joints]) table.drop();
		this.#touches.drop();
	}

	/** The loom as it stands now. The draft must not be worked on after this. */
	loom(): Loom {
		return {
			...this.#base,
			parts: this.parts.kept(),
			contacts: this.contacts.kept(),
			wires: this.wires.kept(),
			joints: this.joints.kept(),
		};
	}

	touched(): Touched {
		return this.#touches.record();
	}

	#touchEnd(wire: Wire, side: Side): void {
		this.#touches.touch("ends", endKey(wire, side));
		this.#touchPlace(wire[side]);
	}

	#touchPlace(end: WireEnd): void {
		if (end.at === "contact") this.#touchContact(end.contact);
		if (end.at === "joint") this.#touches.touch("joints", end.joint);
	}

	#touchContact(id: string): void {
		this.#touches.touch("contacts", id);
		const contact = this.contacts.get(id);
		const opened = contact && connectorOf(this, contact);
		if (opened) this.#touches.touch("connectors", opened);
	}

	#places(): Map<string, readonly string[]> {
		if (this.#byPlace === undefined) {
			this.#byPlace = new Map();
			for (const wire of this.wires.kept().values()) this.#refile(this.#byPlace, undefined, wire);
		}
		return this.#byPlace;
	}

	/** Lists are replaced, not changed: forks share them. */
	#refile(places: Map<string, readonly string[]>, before: Wire | undefined, after: Wire | undefined): void {
		for (const end of before ? [before.from, before.to] : []) {
			const place = endId(end);
			const wires = place === undefined ? undefined : places.get(place);
			if (wires?.includes(before!.id))
				places.set(
					place!,
					wires.filter((id) => id !== before!.id),
				);
		}
		for (const end of after ? [after.from, after.to] : []) {
			const place = endId(end);
			if (place === undefined) continue;
			const wires = places.get(place) ?? [];
			if (!wires.includes(after!.id)) places.set(place, [...wires, after!.id]);
		}
	}
}

/** Kinds of part whose contacts are held by the part's own housing or socket. */
const ownConnectorKinds = new Set(["connector", "fuse", "relay"]);

export const isOwnConnector = (part: Part): boolean => ownConnectorKinds.has(part.kind);

interface Parts {
	readonly parts: { get(id: string): Part | undefined };
}

/** The connector that holds a contact's loom terminal; empty for a bolted contact. */
export function connectorOf(loom: Parts, contact: Contact): string {
	if (contact.connector !== "") return contact.connector;
	const part = loom.parts.get(contact.part);
	return part !== undefined && isOwnConnector(part) ? part.id : "";
}

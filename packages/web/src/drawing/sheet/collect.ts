/** Which contacts, joints and wires a drawing shows: the path asked for, what hangs together with it, and so many wires further. */
import type { Loom } from "@loomwright/engine";
import { indexOf, isInLine, nameOf } from "./loom-index.js";

export interface Collected {
	readonly contacts: ReadonlySet<string>;
	readonly joints: ReadonlySet<string>;
	readonly wires: ReadonlySet<string>;
	/** What the path itself names, wires included. */
	readonly named: ReadonlySet<string>;
	readonly unknown: readonly string[];
	readonly more: boolean;
}

/** Parts with at most this many contacts are drawn whole; of larger ones, and of units, only the pins concerned. */
const WHOLE_PART_CONTACTS = 6;

/** A ground point or bar with more wires than this is not followed further: it would draw the whole car. */
const MOST_FOLLOWED = 5;

export function collect(loom: Loom, path: readonly string[], further: number): Collected {
	const picked = new Picked(loom);
	const unknown = path.filter((name) => !picked.name(name.replace(/!pin$/, "")));
	picked.complete();
	let more = picked.frontier();
	// A part by itself says little: its own wires belong to it.
	const least = picked.wires.size === 0 ? 1 : 0;
	for (let step = 0; step < Math.max(least, further) && more.length > 0; step++) {
		for (const wire of more) picked.wire(wire);
		picked.complete();
		more = picked.frontier();
	}
	return { ...picked, named: new Set(path), unknown, more: more.length > 0 };
}

class Picked {
	readonly contacts = new Set<string>();
	readonly joints = new Set<string>();
	readonly wires = new Set<string>();
	readonly #loom: Loom;

	constructor(loom: Loom) {
		this.#loom = loom;
	}

	/** Adds what has that name; false where nothing has. */
	name(name: string): boolean {
		const loom = this.#loom;
		if (loom.contacts.has(name)) this.contacts.add(name);
		else if (loom.joints.has(name)) this.joints.add(name);
		else if (loom.wires.has(name)) this.wire(name);
		else if (loom.parts.has(name)) this.#part(name);
		else return false;
		return true;
	}

	wire(id: string): void {
		const wire = this.#loom.wires.get(id)!;
		this.wires.add(id);
		for (const end of [wire.from, wire.to]) {
			if (end.at === "contact") this.contacts.add(end.contact);
			if (end.at === "joint") this.joints.add(end.joint);
		}
	}

	/** A housing stands for no contact of its own here: its contacts come by their parts. */
	#part(id: string): void {
		const contacts = indexOf(this.#loom).contactsOf.get(id) ?? [];
		const unit = this.#loom.parts.get(id)?.kind === "control unit";
		if (contacts.length <= WHOLE_PART_CONTACTS && !unit)
			for (const contact of contacts) this.contacts.add(contact.id);
	}

	/** Small parts whole, both halves of a cavity, and every wire between what is shown. */
	complete(): void {
		const index = indexOf(this.#loom);
		for (const id of [...this.contacts]) {
			const contact = this.#loom.contacts.get(id)!;
			const half = index.otherHalf.get(id);
			if (half !== undefined) this.contacts.add(half);
			if (!isInLine(this.#loom, contact)) this.#part(contact.part);
		}
		for (const wire of this.#loom.wires.values()) {
			const ends = [nameOf(wire.from), nameOf(wire.to)];
			if (ends.every((end) => this.contacts.has(end) || this.joints.has(end))) this.wires.add(wire.id);
		}
	}

	/** Wires one step further than what is shown. */
	frontier(): string[] {
		const { wiresAt } = indexOf(this.#loom);
		const follow = (name: string) => {
			const wires = wiresAt.get(name) ?? [];
			const kind = this.#loom.joints.get(name)?.kind ?? "splice";
			return kind === "splice" || wires.length <= MOST_FOLLOWED ? wires : [];
		};
		const next = [...this.contacts, ...this.joints].flatMap(follow).map((wire) => wire.id);
		return [...new Set(next)].filter((id) => !this.wires.has(id));
	}
}

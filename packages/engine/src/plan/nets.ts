/** The circuits of a loom as they hang together by wires, splices and mated in-line connectors; devices part them. */
import { endName, type Loom, type Wire, type WireEnd } from "../loom/index.js";

/** All that conducts together. */
export interface Net {
	readonly id: string;
	/** Contacts of devices; the halves of in-line connectors are not among them. */
	readonly contacts: readonly string[];
	readonly joints: readonly string[];
	readonly wires: readonly Wire[];
	/** Bare ends; those isolated already are left as they are. */
	readonly loose: readonly LooseEnd[];
	/** Ground points among the joints. */
	readonly grounds: readonly string[];
}

export interface LooseEnd {
	readonly wire: string;
	readonly side: "from" | "to";
}

export const SIDES = ["from", "to"] as const;

export const isBare = (end: WireEnd): boolean => end.at === "loose" && !end.insulated;

/** The nets of a loom, by contact, joint and wire. Cost: nearly linear in wires and contacts. */
export class Nets {
	readonly loom: Loom;
	readonly all: readonly Net[];
	readonly #parent = new Map<string, string>();
	readonly #nets = new Map<string, Net>();

	constructor(loom: Loom) {
		this.loom = loom;
		for (const id of loom.contacts.keys()) this.#parent.set(`c ${id}`, `c ${id}`);
		for (const id of loom.joints.keys()) this.#parent.set(`j ${id}`, `j ${id}`);
		for (const wire of loom.wires.values()) {
			this.#parent.set(`w ${wire.id}`, `w ${wire.id}`);
			for (const side of SIDES) this.#unite(`w ${wire.id}`, keyOf(wire[side]));
		}
		const halves = new Map<string, string>();
		for (const { id, part, cavity } of loom.contacts.values()) {
			if (!this.isInLine(id)) continue;
			const place = `${part} ${cavity}`;
			const first = halves.get(place);
			if (first === undefined) halves.set(place, id);
			else this.#unite(`c ${first}`, `c ${id}`);
		}
		this.all = this.#gather();
	}

	isInLine(contact: string): boolean {
		return this.loom.parts.get(this.loom.contacts.get(contact)?.part ?? "")?.kind === "connector";
	}

	ofContact = (id: string): Net | undefined => this.#nets.get(this.#root(`c ${id}`) ?? "");
	ofJoint = (id: string): Net | undefined => this.#nets.get(this.#root(`j ${id}`) ?? "");

	/** From one wire to each other of its net, the smallest cross-section on the widest way. Cost: O(wires^2) of the net. */
	widest(net: Net, from: string): Map<string, number> {
		const start = net.wires.find((wire) => wire.id === from);
		const reached = new Map<string, number>();
		const queue = start === undefined ? [] : [start];
		if (start !== undefined) reached.set(from, start.mm2);
		while (queue.length > 0) {
			// Widest way first: each wire is final when taken.
			queue.sort((a, b) => reached.get(b.id)! - reached.get(a.id)!);
			const wire = queue.shift()!;
			for (const next of net.wires) {
				if (reached.has(next.id) || !this.#meets(wire, next)) continue;
				reached.set(next.id, Math.min(reached.get(wire.id)!, next.mm2));
				queue.push(next);
			}
		}
		return reached;
	}

	#meets(one: Wire, other: Wire): boolean {
		return SIDES.some((a) => SIDES.some((b) => this.#together(one[a], other[b])));
	}

	#together(a: WireEnd, b: WireEnd): boolean {
		if (a.at === "loose" || b.at === "loose") return false;
		if (endName(a) === endName(b)) return true;
		const [x, y] = [this.loom.contacts.get(endName(a)), this.loom.contacts.get(endName(b))];
		return (
			x !== undefined && y !== undefined && x.part === y.part && x.cavity === y.cavity && this.isInLine(x.id)
		);
	}

	#gather(): Net[] {
		const lists = new Map<string, { -readonly [K in keyof Omit<Net, "id">]: Net[K][number][] }>();
		const of = (key: string) => {
			const root = this.#root(key)!;
			const list = lists.get(root) ?? { contacts: [], joints: [], wires: [], loose: [], grounds: [] };
			lists.set(root, list);
			return list;
		};
		for (const id of this.loom.contacts.keys()) if (!this.isInLine(id)) of(`c ${id}`).contacts.push(id);
		for (const joint of this.loom.joints.values()) {
			of(`j ${joint.id}`).joints.push(joint.id);
			if (joint.kind === "ground") of(`j ${joint.id}`).grounds.push(joint.id);
		}
		for (const wire of this.loom.wires.values()) {
			const list = of(`w ${wire.id}`);
			list.wires.push(wire);
			for (const side of SIDES) if (isBare(wire[side])) list.loose.push({ wire: wire.id, side });
		}
		return [...lists].map(([id, list]) => {
			const net = { id, ...list };
			this.#nets.set(id, net);
			return net;
		});
	}

	#root(key: string): string | undefined {
		let root = this.#parent.get(key);
		if (root === undefined) return undefined;
		while (this.#parent.get(root) !== root) root = this.#parent.get(root)!;
		this.#parent.set(key, root);
		return root;
	}

	#unite(a: string, b: string | undefined): void {
		if (b === undefined) return;
		const [x, y] = [this.#root(a), this.#root(b)];
		if (x !== undefined && y !== undefined) this.#parent.set(y, x);
	}
}

const keyOf = (end: WireEnd): string | undefined =>
	end.at === "loose" ? undefined : `${end.at === "contact" ? "c" : "j"} ${endName(end)}`;

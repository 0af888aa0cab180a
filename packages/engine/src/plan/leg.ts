/** A new wire, or a joint, between two points at which a circuit can be taken up. */
import { EMPTY_CELLS, type Wire } from "../loom/index.js";
import type { Costs } from "./costs.js";
import type { Places, Spot } from "./places.js";
import type { Step, WantedCircuit } from "./types.js";

/** How a circuit is taken up at a point. */
export type Attach =
	/** A contact with room for a terminal. */
	| { readonly by: "cavity"; readonly contact: string }
	/** The bare end of a wire. */
	| { readonly by: "bare"; readonly wire: string; readonly like: Wire }
	/** The run of a wire, cut at so many metres from its `from` end. */
	| { readonly by: "tap"; readonly wire: string; readonly like: Wire; readonly at: number }
	/** A splice, bar or ground point. */
	| { readonly by: "joint"; readonly joint: string };

export interface Point {
	readonly attach: Attach;
	readonly spot: Spot;
}

export interface Leg {
	readonly steps: readonly Step[];
	/** Joints made or opened. */
	readonly joints: number;
	/** Metres of new wire; 0 where two ends are joined directly. */
	readonly metres: number;
}

/** Names that a proposal's steps use until the whole is known; the braces make sure that no car has them. */
export const newJointName = (circuit: string, k: number): string => `{joint ${circuit} ${k}}`;
export const newWireName = (circuit: string, k: number): string => `{wire ${circuit} ${k}}`;
export const isNewName = (name: string): boolean => name.startsWith("{");

export const step = (kind: string, title: string, more: Partial<Step>): Step => ({
	kind,
	title,
	...EMPTY_CELLS,
	...more,
});

/** Makes the legs of one circuit; it counts the names that it gives. */
export class LegMaker {
	readonly #circuit: WantedCircuit;
	readonly #places: Places;
	readonly #costs: Costs;
	readonly #isGround: (joint: string) => boolean;
	#joints = 0;
	#wires = 0;

	constructor(circuit: WantedCircuit, places: Places, costs: Costs) {
		this.#circuit = circuit;
		this.#places = places;
		this.#costs = costs;
		this.#isGround = (joint) => places.joint(joint)?.kind === "ground";
	}

	/**
	 * Undefined where nothing says how far the two are apart.
	 * @param free whether the wire that is continued was another circuit's, so that its name is no good
	 */
	between(a: Point, b: Point, free = false): Leg | undefined {
		const apart = this.#places.apart(a.spot, b.spot);
		if (apart === undefined) return undefined;
		const near = apart <= this.#costs.row("reach").value && !this.#costs.isWall(a.spot.zone, b.spot.zone);
		const joined = near ? (this.#direct(a, b) ?? this.#direct(b, a)) : undefined;
		if (joined !== undefined) return { ...joined, metres: 0 };
		const metres = Math.max(0.1, Math.round((apart + this.#costs.row("spare length").value) * 20) / 20);
		// A bare end is extended rather than spliced to a wire of its own.
		const [first, second] = b.attach.by === "bare" && a.attach.by !== "bare" ? [b, a] : [a, b];
		const far = this.#named(second);
		if (first.attach.by === "bare") {
			const { wire, like } = first.attach;
			const extended = step("extend", `${wire} extended to ${far.name}`, {
				wire,
				to: far.name,
				fresh: this.#wire(),
				joint: this.#joint(),
				metres,
				place: first.spot.place,
				note: this.#insulation(a, b),
				...this.#like(like, free),
			});
			return { steps: [...far.steps, extended], joints: far.joints + 1, metres };
		}
		const near1 = this.#named(first);
		const like = [first, second]
			.map(({ attach }) => ("like" in attach ? attach.like : undefined))
			.find((w) => w);
		const names = { from: near1.name, to: far.name, fresh: this.#wire(), metres, place: first.spot.place };
		const note = this.#insulation(a, b);
		const ground = this.#isGround(far.name) && near1.name.includes(".");
		const laid = step(ground ? "tie to ground" : "add wire", `new wire from ${near1.name} to ${far.name}`, {
			...names,
			note,
			...this.#like(like, free),
		});
		return { steps: [...near1.steps, ...far.steps, laid], joints: near1.joints + far.joints, metres };
	}

	/** Two ends that reach each other, joined without a new wire. */
	#direct({ attach: a, spot }: Point, { attach: b }: Point): Omit<Leg, "metres"> | undefined {
		if (a.by !== "bare") return undefined;
		const place = spot.place;
		if (b.by === "bare") {
			const joint = this.#joint();
			const made = step("join", `${a.wire} joined to ${b.wire}`, {
				wire: a.wire,
				other: b.wire,
				joint,
				place,
			});
			return { steps: [made], joints: 1 };
		}
		if (b.by === "tap") {
			const more = { wire: a.wire, other: b.wire, at: { metres: b.at }, joint: this.#joint(), place };
			return { steps: [step("join", `${a.wire} joined into the run of ${b.wire}`, more)], joints: 1 };
		}
		if (b.by === "joint") {
			const ground = this.#isGround(b.joint);
			const kind = ground ? "tie to ground" : "join";
			const made = step(kind, `${a.wire} to ${b.joint}`, { wire: a.wire, to: b.joint, place });
			return { steps: [made], joints: ground ? 0 : 1 };
		}
		return undefined;
	}

	/** A point as something that a new wire can run to: where it has no name yet, a splice is set there. */
	#named({ attach, spot: { place } }: Point): { name: string; steps: Step[]; joints: number } {
		if (attach.by === "cavity") return { name: attach.contact, steps: [], joints: 0 };
		if (attach.by === "joint") {
			const splice = this.#places.joint(attach.joint)?.kind === "splice";
			return { name: attach.joint, steps: [], joints: splice ? 1 : 0 };
		}
		const joint = this.#joint();
		const set = step("fit part", `splice on ${attach.wire}`, { part: joint, place });
		const put = (wire: string) => step("join", `${wire} into the splice`, { wire, to: joint, place });
		if (attach.by === "bare") return { name: joint, steps: [set, put(attach.wire)], joints: 1 };
		const tail = `${attach.wire}+b`;
		const cut = step("cut", `${attach.wire} cut for a splice`, {
			wire: attach.wire,
			at: { metres: attach.at },
			fresh: tail,
			place,
		});
		return { name: joint, steps: [cut, set, put(attach.wire), put(tail)], joints: 1 };
	}

	/** Size, colour and pair of a new wire: no smaller than the wire it continues. */
	#like(wire: Wire | undefined, free: boolean): Pick<Step, "mm2" | "colours" | "pair" | "circuit"> {
		const { mm2, colours, pair, target } = this.#circuit;
		return {
			mm2: Math.max(mm2, wire?.mm2 ?? 0),
			colours: colours.length > 0 ? colours : (wire?.colours ?? []),
			pair,
			circuit: (free ? "" : wire?.circuit) || target,
		};
	}

	/** What a new wire's insulation must stand at the hotter of its ends. */
	#insulation(a: Point, b: Point): string {
		const celsius = this.#places.celsius([a.spot.place, b.spot.place]);
		return celsius === undefined ? "" : `insulation for ${celsius} degC or more`;
	}

	#joint(): string {
		return newJointName(this.#circuit.target, ++this.#joints);
	}

	#wire(): string {
		return newWireName(this.#circuit.target, ++this.#wires);
	}
}

/** A wire cut so that the side at a contact stays with it, and the rest is free: names of both pieces and the step. */
export function detached(
	wire: Wire,
	contact: string,
	at: number | undefined,
	place: string,
): { stays: string; free: string; cut: Step } {
	const atFrom = wire.from.at === "contact" && wire.from.contact === contact;
	if (at === undefined) {
		const side = atFrom ? "from" : "to";
		const title = `${wire.id} out of ${contact}`;
		return { stays: "", free: wire.id, cut: step("cut", title, { wire: wire.id, at: side, place }) };
	}
	const tail = `${wire.id}+b`;
	const cut = step("cut", `${wire.id} cut`, { wire: wire.id, at: { metres: at }, fresh: tail, place });
	return atFrom ? { stays: wire.id, free: tail, cut } : { stays: tail, free: wire.id, cut };
}

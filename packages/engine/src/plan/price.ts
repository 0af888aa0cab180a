/** What recipe steps cost, ours and those written by hand alike. */
import {
	endName,
	type Loom,
	type NewParts,
	type RecipeTable,
	type Wire,
	type WireEnd,
} from "../loom/index.js";
import { type Costs, NOTHING, plus, times } from "./costs.js";
import { isNewName } from "./leg.js";
import type { Places, Spot } from "./places.js";
import type { Price, Step } from "./types.js";

/** The price of some steps: what is theirs alone, and by key what is paid once however often it is needed. */
export interface Priced {
	readonly own: Price;
	readonly shared: ReadonlyMap<string, Price>;
}

/** What pricing must know of a wire. */
type Made = Pick<Wire, "mm2" | "from" | "to">;

const bare: WireEnd = { at: "loose", insulated: false };

/** Prices steps of one car, one after the other: it remembers the wires and splices that they make. */
export class Pricer {
	readonly #costs: Costs;
	readonly #places: Places;
	readonly #loom: Loom;
	readonly #fresh: NewParts;
	/** Wires that steps have made or cut so far. */
	readonly #made = new Map<string, Made>();
	/** Where splices that steps make are. */
	readonly #joints = new Map<string, string>();
	#own: Price = NOTHING;
	#shared = new Map<string, Price>();

	constructor(costs: Costs, places: Places, loom: Loom, fresh: NewParts) {
		this.#costs = costs;
		this.#places = places;
		this.#loom = loom;
		this.#fresh = fresh;
	}

	/** @throws RangeError where a step works on a wire that neither the loom nor a step before has. */
	price(steps: readonly Step[]): Priced {
		[this.#own, this.#shared] = [NOTHING, new Map()];
		for (const step of steps) this.#step(step);
		return { own: this.#own, shared: this.#shared };
	}

	#add(price: Price): void {
		this.#own = plus(this.#own, price);
	}

	#step(step: Step): void {
		const { kind } = step;
		if (kind === "fit part") this.#joints.set(step.part, step.place);
		if (kind === "cut") this.#cut(step);
		else if (kind === "extend") {
			this.#joint(step.joint, step.place);
			this.#newWire(step, this.#places.spot(step.place));
			this.#end(step.to);
		} else if (kind === "join") {
			if (step.to !== "") this.#end(step.to, step.place);
			else this.#joint(step.joint, step.place);
			if (typeof step.at === "object") this.#halve(step.other, step.fresh);
		} else if (kind === "add wire" || kind === "bridge") {
			this.#newWire(step, this.#spotOf(step.from));
			this.#end(step.from);
			this.#end(step.to);
			// Two wires in one terminal: as likely to fail as a joint.
			if (kind === "bridge")
				this.#add({ ...NOTHING, risk: this.#costs.joint(this.#spotOf(step.from).zone).risk });
		} else if (kind === "tie to ground") {
			if (step.from !== "") {
				this.#newWire(step, this.#spotOf(step.from));
				this.#end(step.from);
			}
			this.#end(step.to);
		} else if (kind === "move terminal") {
			this.#add(this.#costs.work("move terminal"));
			this.#open(step.from);
			this.#open(step.to);
		} else if (kind === "isolate and stow") this.#add(this.#costs.work("isolate"));
		else if (kind === "remove part") this.#part(step, "remove");
		// A splice set is paid where wires are joined to it.
		else if (
			kind === "fit part" &&
			!isNewName(step.part) &&
			this.#fresh.joints.get(step.part)?.kind !== "splice"
		)
			this.#part(step, "fit");
	}

	#wire(id: string): Made | undefined {
		return this.#made.get(id) ?? this.#loom.wires.get(id);
	}

	#cut({ wire: id, at, fresh }: Step): void {
		const wire = this.#wire(id);
		const end = typeof at === "string" ? wire?.[at] : undefined;
		if (end?.at === "contact" && this.#housing(end.contact) !== "") {
			this.#add(this.#costs.work("de-pin"));
			this.#open(end.contact);
		} else this.#add(this.#costs.work("cut"));
		if (typeof at === "object") this.#halve(id, fresh);
	}

	/** A wire cut along its run is two. */
	#halve(id: string, fresh: string): void {
		const wire = this.#wire(id);
		if (wire === undefined) return;
		this.#made.set(id, { ...wire, to: bare });
		this.#made.set(fresh || `${id}+b`, { ...wire, from: bare });
	}

	#newWire({ wire, fresh, mm2, metres, to }: Step, from: Spot): void {
		const size = mm2 ?? this.#wire(wire)?.mm2;
		if (size === undefined) throw new RangeError(`there is no wire ${wire} whose size ${fresh} could have`);
		this.#made.set(fresh, { mm2: size, from: bare, to: bare });
		this.#add(this.#costs.newWire(size, metres ?? 0));
		const far = this.#spotOf(to);
		if (this.#costs.isWall(from.zone, far.zone))
			this.#shared.set(
				`passage ${[from.zone, far.zone].sort().join("/")}`,
				this.#costs.passage(from.zone, far.zone),
			);
	}

	/** A wire's end put to a contact, a ground point or another joint. */
	#end(name: string, place = ""): void {
		const joint = this.#places.joint(name);
		if (joint?.kind === "ground") this.#add(this.#costs.work("ring"));
		else if (joint?.kind === "bar" || name.includes(".")) {
			this.#add(this.#costs.work("crimp"));
			this.#open(name);
		} else this.#joint(name, joint?.place || place);
	}

	#joint(name: string, place: string): void {
		if (!this.#joints.has(name)) this.#joints.set(name, place);
		if (!this.#shared.has(`joint ${name}`))
			this.#shared.set(`joint ${name}`, this.#costs.joint(this.#places.zone(place)));
	}

	#open(contact: string): void {
		const housing = this.#housing(contact);
		if (housing !== "") this.#shared.set(`open ${housing}`, this.#costs.work("open"));
	}

	#housing(contact: string): string {
		return this.#places.contact(contact)?.connector ?? "";
	}

	#spotOf(name: string): Spot {
		if (name.includes(".")) return this.#places.spotOfContact(name);
		return this.#places.spot(this.#places.joint(name)?.place ?? this.#joints.get(name) ?? "");
	}

	#part({ minutes }: Step, item: "fit" | "remove"): void {
		const work = this.#costs.work(item);
		this.#add({ ...work, minutes: minutes ?? work.minutes });
	}
}

/** Steps with their work time; what is done once for several steps counts for the first of them. */
export function timed<Any extends Step>(pricer: Pricer, steps: readonly Any[]): Any[] {
	const paid = new Set<string>();
	return steps.map((step) => {
		const { own, shared } = pricer.price([step]);
		let { minutes } = own;
		for (const [key, price] of shared) if (!paid.has(key)) minutes += price.minutes;
		for (const key of shared.keys()) paid.add(key);
		return { ...step, minutes: step.minutes ?? Math.round(minutes * 10) / 10 };
	});
}

/** A whole recipe: each housing, splice and passage paid once. */
export function priceRecipe(pricer: Pricer, recipe: RecipeTable): Price {
	const { own, shared } = pricer.price(recipe);
	return [...shared.values()].reduce(plus, own);
}

/** A new loom in place of the old one: every wire made anew, on the bench; restraint wiring left out. */
export function priceNewLoom(costs: Costs, loom: Loom): Price {
	let price = costs.work("new loom");
	const share = costs.row("new loom share").value;
	for (const wire of loom.wires.values()) {
		if (wire.marks.includes("pyrotechnic")) continue;
		const { minutes, material } = costs.newWire(wire.mm2, wire.metres);
		const ends = [wire.from, wire.to].filter((end) => endName(end).includes(".")).length;
		price = plus(price, { minutes: minutes * share, material, risk: 0 });
		price = plus(price, times(costs.work("crimp"), ends));
	}
	return price;
}

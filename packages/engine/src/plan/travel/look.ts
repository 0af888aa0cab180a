/** One step held against both cars. */
import type { Loom, NewParts, RecipeStep } from "../../loom/index.js";
import { type MatchedWire, matchContact } from "./match.js";
import { contactReasons, lengthReasons, type Reason, reason, wireReasons } from "./reasons.js";

export interface Names {
	/** Wires by their name in the recipe to their name here. */
	readonly here: Map<string, string>;
	/** Wires and pieces of wires, by their name in the recipe, to the wire as delivered. */
	readonly delivered: Map<string, string>;
}

/** One step looked at in both cars, and said in the names of the other one. */
export class Look {
	readonly #step: RecipeStep;
	readonly #before: Loom;
	readonly #here: Loom;
	readonly #fresh: NewParts;
	readonly #pairs: ReadonlyMap<string, MatchedWire>;
	readonly #names: Names;
	readonly #reasons: Reason[] = [];

	constructor(
		step: RecipeStep,
		before: Loom,
		here: Loom,
		fresh: NewParts,
		pairs: ReadonlyMap<string, MatchedWire>,
		names: Names,
	) {
		this.#step = step;
		this.#before = before;
		this.#here = here;
		this.#fresh = fresh;
		this.#pairs = pairs;
		this.#names = names;
	}

	done(): { here: RecipeStep; reasons: readonly Reason[] } {
		const step = this.#step;
		const tapped = step.kind === "join" && step.other !== "";
		const wire = this.#wire(step.wire, !tapped);
		const other = this.#wire(step.other, tapped);
		const worked = tapped ? other : wire;
		const at = this.#at(worked);
		const here: RecipeStep = {
			...step,
			wire: wire?.id ?? step.wire,
			other: other?.id ?? step.other,
			at,
			from: this.#place(step.from),
			to: this.#place(step.to),
		};
		this.#part(step.part);
		this.#tail(step, here, worked?.turned === true);
		return { here, reasons: this.#reasons };
	}

	#contactOf = (id: string): string => {
		const contact = this.#before.contacts.get(id);
		return (contact && matchContact(contact, this.#here)?.id) ?? id;
	};

	/** @param worked whether the step's `at` is along this wire */
	#wire(id: string, worked: boolean): { id: string; turned: boolean; is: number } | undefined {
		const pair = this.#pairs.get(this.#names.delivered.get(id) ?? "");
		const name = this.#names.here.get(id);
		if (pair === undefined || name === undefined) return undefined;
		this.#reasons.push(...wireReasons(pair.was, pair.is, pair.turned, this.#contactOf));
		if (worked && typeof this.#step.at === "object") this.#reasons.push(...lengthReasons(pair.was, pair.is));
		if (pair.is.marks.includes("pyrotechnic"))
			this.#reasons.push(
				reason(
					"restraint",
					id,
					"",
					name,
					`${name} belongs to a restraint circuit here: maker's procedure only`,
				),
			);
		return { id: name, turned: pair.turned, is: this.#here.wires.get(name)?.metres ?? pair.is.metres };
	}

	/** A place along the wire keeps its distance from the same contact. */
	#at(wire: { turned: boolean; is: number } | undefined): RecipeStep["at"] {
		const { at } = this.#step;
		if (at === undefined || wire === undefined || !wire.turned) return at;
		if (at === "from") return "to";
		return at === "to" ? "from" : { metres: wire.is - at.metres };
	}

	/** The halves of a cut wire: what is the near one there may be the far one here. */
	#tail(step: RecipeStep, here: RecipeStep, turned: boolean): void {
		if (typeof step.at !== "object") return;
		const cut = step.kind === "join" ? step.other : step.wire;
		const cutHere = step.kind === "join" ? here.other : here.wire;
		const [tail, tailHere] = [step.fresh || `${cut}+b`, here.fresh || `${cutHere}+b`];
		const { here: names, delivered } = this.#names;
		names.set(cut, turned ? tailHere : cutHere);
		names.set(tail, turned ? cutHere : tailHere);
		delivered.set(tail, delivered.get(cut) ?? "");
	}

	#place(id: string): string {
		const joint = this.#before.joints.get(id);
		if (joint !== undefined) {
			const is = this.#here.joints.get(id);
			if (is !== undefined && is.place !== joint.place)
				this.#reasons.push(
					reason("place", id, joint.place, is.place, `${id}: was ${joint.place}, here ${is.place}`),
				);
			return id;
		}
		const was = this.#before.contacts.get(id);
		if (was === undefined || this.#fresh.contacts.has(id)) return id;
		const is = matchContact(was, this.#here);
		if (is === undefined) return id;
		const found = contactReasons(was, is, this.#before, this.#here);
		// Where a lead ends matters to a new wire's length; a terminal that only moves within its housing does not travel.
		const laid = this.#step.metres !== undefined;
		this.#reasons.push(...found.filter(({ kind }) => kind !== "place" || laid));
		return is.id;
	}

	#part(id: string): void {
		const [was, is] = [this.#before.parts.get(id), this.#here.parts.get(id)];
		if (was === undefined || is === undefined || was.kind === is.kind) return;
		this.#reasons.push(reason("part", id, was.kind, is.kind, `${id}: was a ${was.kind}, here a ${is.kind}`));
	}
}

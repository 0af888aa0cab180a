import type { Contact, Joint, Part, RecipeStep, Wire, WireEnd } from "../loom/index.js";
import { connectorOf, type Draft } from "./draft.js";
import { type Misfit, misfit } from "./misfit.js";
import type { Side } from "./touched.js";

/**
 * The questions a step asks of the draft before it works on it. Each answers with what was
 * asked for, or notes a misfit and answers `undefined`, so that one pass finds all that is
 * wrong with a row.
 */
export class Checks {
	readonly misfits: Misfit[] = [];
	readonly #draft: Draft;
	readonly #step: RecipeStep;

	constructor(draft: Draft, step: RecipeStep) {
		this.#draft = draft;
		this.#step = step;
	}

	fail(column: string, problem: string, wanted: string): undefined {
		this.misfits.push(misfit(this.#step, column, problem, wanted));
		return undefined;
	}

	wire(column: "wire" | "other"): Wire | undefined {
		const id = this.#step[column];
		return (
			this.#draft.wires.get(id) ??
			this.fail(
				column,
				`there is no wire ${id} at this step`,
				"name a wire of the loom or of an earlier step",
			)
		);
	}

	/** The side of a wire's one loose end. */
	looseSide(column: "wire" | "other", wire: Wire | undefined): Side | undefined {
		if (wire === undefined) return undefined;
		const loose = looseSides(wire);
		if (loose.length === 0)
			return this.fail(
				column,
				`${wire.id} has no loose end, it runs from ${endText(wire.from)} to ${endText(wire.to)}`,
				"cut it first, or name a wire with a loose end",
			);
		if (loose.length === 2)
			return this.fail(column, `both ends of ${wire.id} are loose`, "name a wire with one loose end");
		return loose[0];
	}

	contact(column: "from" | "to"): Contact | undefined {
		const id = this.#step[column];
		return (
			this.#draft.contacts.get(id) ??
			this.fail(
				column,
				this.#draft.joints.has(id) ? `${id} is a joint` : `there is no contact ${id} at this step`,
				"name a contact of the loom or of a part fitted earlier",
			)
		);
	}

	joint(column: "to"): Joint | undefined {
		const id = this.#step[column];
		return (
			this.#draft.joints.get(id) ??
			this.fail(
				column,
				this.#draft.contacts.has(id) ? `${id} is a contact` : `there is no joint ${id} at this step`,
				"name a splice, ground point or bar of the loom or of an earlier step",
			)
		);
	}

	/** A contact with room for one more terminal, or any joint. */
	place(column: "from" | "to"): WireEnd | undefined {
		const id = this.#step[column];
		if (this.#draft.joints.has(id)) return { at: "joint", joint: id };
		const contact = this.#draft.contacts.get(id);
		if (contact === undefined)
			return this.fail(
				column,
				`there is no contact or joint ${id} at this step`,
				"name one of the loom or of an earlier step",
			);
		return this.free(column, contact) && { at: "contact", contact: id };
	}

	/** The contact, if no wire is in its cavity. A bolted contact (a stud) takes any number. */
	free(column: "from" | "to", contact: Contact | undefined): Contact | undefined {
		if (contact === undefined) return undefined;
		const [there] = this.#draft.wiresAt(contact.id);
		if (there === undefined || connectorOf(this.#draft, contact) === "") return contact;
		return this.fail(
			column,
			`${contact.id} already has wire ${there.id} on it`,
			"take that wire off in an earlier step, or join the wires with a splice",
		);
	}

	/** The name of a wire the step makes. */
	newWire(id: string): string | undefined {
		if (!this.#draft.wires.has(id)) return id;
		return this.fail("new", `there is a wire ${id} already`, "give the new wire a name of its own");
	}

	/** The splice the step makes, where its row says the work is done. */
	newSplice(): Joint | undefined {
		const { joint: id, place } = this.#step;
		if (this.#draft.joints.has(id))
			return this.fail("joint", `there is a joint ${id} already`, "give the new splice a name of its own");
		return { id, kind: "splice", label: "", place, ohms: undefined, metal: "", marks: [], note: "" };
	}

	/** A place along a wire, strictly between its ends: metres from its `from` end. */
	along(wire: Wire | undefined, metres: number): number | undefined {
		if (wire === undefined) return undefined;
		if (metres > 0 && metres < wire.metres) return metres;
		return this.fail(
			"at",
			`${metres} m is not on ${wire.id}, which is ${wire.metres} m long`,
			`give a length between 0 and ${wire.metres} m`,
		);
	}

	part(): Part | undefined {
		const id = this.#step.part;
		return (
			this.#draft.parts.get(id) ??
			this.fail(
				"part",
				this.#draft.joints.has(id) ? `${id} is a joint` : `there is no part ${id} at this step`,
				"name a part of the loom",
			)
		);
	}
}

export const looseSides = (wire: Wire): Side[] =>
	(["from", "to"] as const).filter((side) => wire[side].at === "loose");

/** A wire's end in words. */
export function endText(end: WireEnd): string {
	if (end.at === "contact") return end.contact;
	if (end.at === "joint") return end.joint;
	return end.insulated ? "a stowed end" : "a bare end";
}

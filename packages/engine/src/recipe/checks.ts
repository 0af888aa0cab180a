import type { Contact, Joint, Part, RecipeStep, Wire, WireEnd } from "../loom/index.js";
import { didYouMean } from "../tables/index.js";
import { connectorOf, type Draft } from "./draft.js";
import { type Misfit, misfit } from "./misfit.js";
import type { Side } from "./touched.js";
import { endText, looseSides, tidyMetres } from "./wire-ends.js";

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
		return this.#draft.wires.get(id) ?? this.#absent(column, "wire", id);
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
			(this.#draft.joints.has(id)
				? this.fail(column, `${id} is a joint`, "name a contact")
				: this.#absent(column, "contact", id))
		);
	}

	joint(column: "to"): Joint | undefined {
		const id = this.#step[column];
		return (
			this.#draft.joints.get(id) ??
			(this.#draft.contacts.has(id)
				? this.fail(column, `${id} is a contact`, "name a splice, ground point or bar")
				: this.#absent(column, "joint", id))
		);
	}

	/** A contact with room for one more terminal, or any joint. */
	place(column: "from" | "to"): WireEnd | undefined {
		const id = this.#step[column];
		if (this.#draft.joints.has(id)) return { at: "joint", joint: id };
		const contact = this.#draft.contacts.get(id);
		if (contact === undefined) return this.#absent(column, "contact or joint", id);
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
		if (this.#draft.joints.has(id) || this.#draft.parts.has(id))
			return this.fail(
				"joint",
				`there is a ${this.#draft.joints.has(id) ? "joint" : "part"} ${id} already`,
				"give the new splice a name of its own",
			);
		return { id, kind: "splice", label: "", place, ohms: undefined, metal: "", marks: [], note: "" };
	}

	/** A place along a wire, strictly between its ends: metres from its `from` end. */
	along(wire: Wire | undefined, metres: number): number | undefined {
		if (wire === undefined) return undefined;
		if (tidyMetres(metres) > 0 && tidyMetres(wire.metres - metres) > 0) return metres;
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
			(this.#draft.joints.has(id)
				? this.fail("part", `${id} is a joint`, "name a part")
				: this.#absent("part", "part", id))
		);
	}

	/** What is not there is perhaps made by another step, which then did not fit, was left out or comes later. */
	#absent(
		column: string,
		what: "wire" | "contact" | "joint" | "contact or joint" | "part",
		id: string,
	): undefined {
		const { makers, wires, contacts, joints, parts } = this.#draft;
		if (makers === undefined) return this.fail(column, `there is no ${what} ${id} at this step`, "");
		const maker = makers.get(id) ?? makers.get(id.slice(0, Math.max(0, id.indexOf("."))));
		const tables = {
			wire: [wires],
			contact: [contacts],
			joint: [joints],
			"contact or joint": [contacts, joints],
			part: [parts],
		};
		const known = tables[what].flatMap((table) => [...table.kept().keys()]);
		const wanted =
			maker === undefined || maker === this.#step.step
				? didYouMean(id, known, `name a ${what} of the loom`)
				: `step ${maker} makes it and must be done before`;
		return this.fail(column, `there is no ${what} ${id} at this step`, wanted);
	}
}

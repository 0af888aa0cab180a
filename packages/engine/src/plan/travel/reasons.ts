/** Why a step cannot simply be done on another car. */
import { type Contact, endName, formatWireEnd, type Loom, type Wire } from "../../loom/index.js";

export const REASONS = [
	"absent",
	"taken",
	"there already",
	"waits",
	"restraint",
	"name",
	"contact",
	"cavity",
	"ends",
	"colour",
	"size",
	"length",
	"pair",
	"place",
	"part",
	"other",
] as const;
export type ReasonKind = (typeof REASONS)[number];

export interface Reason {
	readonly kind: ReasonKind;
	/** The wire, contact, part or joint meant, by its name in the recipe. */
	readonly subject: string;
	/** In the car the recipe was made for, and here; empty where there is nothing to compare. */
	readonly was: string;
	readonly is: string;
	readonly text: string;
}

export const reason = (kind: ReasonKind, subject: string, was: string, is: string, text: string): Reason => ({
	kind,
	subject,
	was,
	is,
	text,
});

const differs = (kind: ReasonKind, subject: string, what: string, was: string, is: string): Reason[] =>
	was === is
		? []
		: [
				reason(
					kind,
					subject,
					was,
					is,
					`${subject}: ${what} was ${was || "not said"}, here ${is || "not said"}`,
				),
			];

/** @param ends whether the ends are to be compared: not where the step works on the wire's middle or on a loose end */
export function wireReasons(
	was: Wire,
	is: Wire,
	turned: boolean,
	contactOf: (id: string) => string,
): Reason[] {
	const name = was.id;
	const [from, to] = turned ? [is.to, is.from] : [is.from, is.to];
	const moved = ([side, mine, theirs]: readonly ["from" | "to", Wire["from"], Wire["from"]]) => {
		const expected = mine.at === "contact" ? contactOf(mine.contact) : endName(mine);
		if (expected === endName(theirs)) return [];
		return differs("ends", name, `its ${side} end`, formatWireEnd(mine), formatWireEnd(theirs));
	};
	return [
		...differs("name", name, "the wire", name, is.id),
		...moved(["from", was.from, from]),
		...moved(["to", was.to, to]),
		...differs("size", name, "size", `${was.mm2} mm2`, `${is.mm2} mm2`),
		...differs("colour", name, "colour", was.colours.join(""), is.colours.join("")),
		...differs(
			"pair",
			name,
			"twisted pair",
			was.pair === "" ? "none" : "a pair",
			is.pair === "" ? "none" : "a pair",
		),
	];
}

/** Where a length along the wire counts. */
export const lengthReasons = (was: Wire, is: Wire): Reason[] =>
	differs("length", was.id, "length", `${was.metres} m`, `${is.metres} m`);

export function contactReasons(was: Contact, is: Contact, before: Loom, here: Loom): Reason[] {
	const place = (loom: Loom, { part }: Contact) => loom.parts.get(part)?.place ?? "";
	return [
		...differs("contact", was.id, "the contact", was.id, is.id),
		...differs("cavity", was.id, "its cavity", cavityText(was), cavityText(is)),
		...differs("contact", was.id, "what the pin is", was.role, is.role),
		...differs("place", was.id, "its place", place(before, was), place(here, is)),
	];
}

const cavityText = ({ connector, cavity }: Contact): string =>
	connector === "" ? "bolted" : `${connector} ${cavity}`;

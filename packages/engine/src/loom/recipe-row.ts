import type { Contact, Joint, Part } from "./types.js";

/** Where along a wire a step works: so many metres from its `from` end, or at one of its ends. */
export type At = { readonly metres: number } | "from" | "to";

/** One row of recipe.csv with its cells typed; what its kind needs and does is the recipe room's. Empty text: not given. */
export interface RecipeStep {
	readonly step: string;
	readonly kind: string;
	readonly title: string;
	readonly wire: string;
	readonly other: string;
	readonly at: At | undefined;
	/** A contact or joint. */
	readonly from: string;
	/** A contact or joint. */
	readonly to: string;
	readonly part: string;
	/** Column `new`: the name of the wire that the step makes. */
	readonly fresh: string;
	readonly joint: string;
	readonly mm2: number | undefined;
	/** IEC 60757 codes; empty where not given. */
	readonly colours: readonly string[];
	readonly metres: number | undefined;
	readonly circuit: string;
	readonly pair: string;
	readonly bundle: string;
	readonly place: string;
	readonly minutes: number | undefined;
	readonly note: string;
	/** Row in recipe.csv as a spreadsheet counts: the header is row 1. */
	readonly row: number;
}

/** The cells that a step leaves empty. */
export const EMPTY_CELLS: Omit<RecipeStep, "step" | "kind" | "title" | "row"> = {
	wire: "",
	other: "",
	at: undefined,
	from: "",
	to: "",
	part: "",
	fresh: "",
	joint: "",
	mm2: undefined,
	colours: [],
	metres: undefined,
	circuit: "",
	pair: "",
	bundle: "",
	place: "",
	minutes: undefined,
	note: "",
};

/** The rows of recipe.csv in their order. */
export type RecipeTable = readonly RecipeStep[];

/** What the recipe fits: parts of new-parts.csv, their contacts, and joints of new-joints.csv. */
export interface NewParts {
	readonly parts: ReadonlyMap<string, Part>;
	readonly contacts: ReadonlyMap<string, Contact>;
	readonly joints: ReadonlyMap<string, Joint>;
}

import type { Joined } from "./joined.js";

/** What is different, in one phrase. */
export type ChangeKind =
	| "part fitted"
	| "part removed"
	| "part changed"
	| "contact added"
	| "contact removed"
	| "contact changed"
	/** A wire the loom did not have before. */
	| "wire added"
	/** A wire the loom no longer has. */
	| "wire removed"
	/** The wire's end is at another place now; listed at both. */
	| "wire moved"
	/** The wire is still there, but this end of it is loose or spliced now. */
	| "wire taken off"
	/** An end that was loose is crimped here now. */
	| "loose end fitted"
	| "now ends loose"
	/** A loose end is isolated now. */
	| "now stowed"
	| "now connected"
	| "spliced"
	| "wire lengthened"
	| "wire shortened"
	/** Same wire, other far end. */
	| "leads elsewhere"
	/** The wire here is as it was up to its splice; what is joined to that splice is not. */
	| "differs beyond a splice"
	/** Another wire in the same cavity. */
	| "wire replaced"
	/** Same wire, same ends: its size, colour, circuit ... differ. */
	| "wire changed"
	| "joint added"
	| "joint removed"
	| "joint changed"
	/** Other wires meet there. */
	| "joint rewired";

/** One difference of two looms. Names that do not apply are empty. */
export interface Change {
	readonly kind: ChangeKind;
	/** The connector (a fuse or relay is its own); empty for what is bolted, spliced or loose. */
	readonly connector: string;
	readonly cavity: string;
	readonly contact: string;
	readonly part: string;
	readonly joint: string;
	/** The wire concerned: the one there now or, if none, the one that was. */
	readonly wire: string;
	readonly before: Joined | undefined;
	readonly after: Joined | undefined;
	readonly text: string;
}

const nothing: Omit<Change, "kind" | "text"> = {
	connector: "",
	cavity: "",
	contact: "",
	part: "",
	joint: "",
	wire: "",
	before: undefined,
	after: undefined,
};

export const change = (kind: ChangeKind, text: string, what: Partial<Change>): Change => ({
	...nothing,
	...what,
	kind,
	text,
});

/** What a rule says: what is wrong, where, why it matters, and what would mend it. */
import type { Circuit } from "../circuit/index.js";

/** `stop`: do not cut or power up; `warn`: mend before the car leaves; `note`: worth knowing. */
export type Severity = "stop" | "warn" | "note";

export interface Finding {
	/** The rule's id, e.g. `sensor-return`. */
	readonly rule: string;
	readonly severity: Severity;
	/** In words, with contact, connector and place. */
	readonly where: string;
	readonly why: string;
	readonly mend: string;
	/** Contacts, joints, wires and parts along the path concerned, in order from supply to ground: for the drawing. */
	readonly path: readonly string[];
	/** Cautions of the circuits concerned. */
	readonly cautions: readonly string[];
}

/** A rule is one file: it looks at the solved network, never at names. */
export interface Rule {
	readonly id: string;
	readonly title: string;
	/** Where the limit comes from: a standard, a row of reference/, or `common practice, no source`. */
	readonly source: string;
	/** @param before the loom as delivered, where this one is it converted: for rules that compare the two */
	check(circuit: Circuit, before?: Circuit): Finding[];
}

/** Evidence in, ranked faults out. */
import type { Question } from "../readings/index.js";

/** A reading that was taken. */
export interface TakenReading extends Question {
	/** Volts, amperes or ohms; `"open"` where the meter showed open. */
	readonly value: number | "open";
}

/** What was seen at one time, with nothing on the car changed meanwhile. */
export interface Occasion {
	readonly note: string;
	/** What was done to the car just before: a connector or relay reseated. Empty: nothing. */
	readonly reseated: string;
	/** Trouble codes read out; undefined when none were read. All codes of the units asked that are not listed were absent. */
	readonly codes: readonly string[] | undefined;
	/** Units that answered the read-out; empty: all. */
	readonly units: readonly string[];
	/** Functions of the car seen to hold or not: `{ cranks: true, starts: false }`. */
	readonly functions: Readonly<Record<string, boolean>>;
	readonly readings: readonly TakenReading[];
	/** Parts tested by themselves on the bench, and whether they were good. */
	readonly bench: Readonly<Record<string, boolean>>;
}

export interface Evidence {
	readonly title: string;
	/** Which loom is on the car. */
	readonly of: "delivered" | "converted";
	/** `off`: it must stay off, and no reading is offered that needs it on. */
	readonly battery?: "off" | undefined;
	readonly occasions: readonly Occasion[];
}

/** One line of why a fault stands where it stands. */
export interface GroundLine {
	readonly text: string;
	/** Times as likely under this fault as on a sound car; above 1 speaks for the fault. */
	readonly times: number;
}

/** One single fault, with what a record of its mending says of it. */
export interface SingleFault {
	readonly id: string;
	readonly kind: string;
	readonly where: string;
	/** Steps of the recipe that worked on it; empty: no hand was on it. */
	readonly steps: readonly string[];
}

export interface RankedFault {
	/** Stable id, e.g. `open:wire:W12`. */
	readonly id: string;
	/** Kind of fault, e.g. `open`, `step left out`, `connector not locked`. */
	readonly kind: string;
	/** In words: what and where. */
	readonly where: string;
	readonly place: string;
	/** 0..1; all ranked faults and the sound car sum to 1. */
	readonly posterior: number;
	/** Chance that it comes and goes, if it is this fault: there on some occasions and not on others. */
	readonly comesAndGoes: number;
	readonly grounds: readonly GroundLine[];
	/** Ids of faults that no reading or code of this car can tell from it. */
	readonly alike: readonly string[];
	/** Contacts, wires, joints and parts concerned, for the drawing. */
	readonly path: readonly string[];
	readonly mend: string;
	/** Itself; of two faults at once, both. */
	readonly singles: readonly SingleFault[];
}

/** What one outcome of a step would say. */
export interface Outcome {
	/** Outcome in words: `0.0 V`, `12.4 to 12.6 V`, `open`. */
	readonly text: string;
	/** Chance of it, 0..1. */
	readonly chance: number;
	/** Where of the leading fault it would favour most. */
	readonly favours: string;
}

export interface NextStep {
	readonly question: Question;
	/** The step in words, for the technician. */
	readonly text: string;
	/** Expected information in bits. */
	readonly bits: number;
	readonly minutes: number;
	/** One sentence: why this one. */
	readonly because: string;
	readonly outcomes: readonly Outcome[];
	readonly cautions: readonly string[];
	/** It was taken before and does not fit: taken once more, it is entered as a new occasion. */
	readonly again: boolean;
}

export type ActionKind = "reseat" | "wiggle" | "swap";

/**
 * Something to do rather than to measure. What is seen after a reseating or a wiggle is entered as a new occasion with
 * `reseated`; of a swap, a fault that goes with the relay or stays as its bench test, one that is gone as `reseated`.
 */
export interface NextAction {
	readonly kind: ActionKind;
	/** Connector, relay or fuse to reseat; connector to wiggle; relay to swap. */
	readonly part: string;
	readonly text: string;
	readonly bits: number;
	readonly minutes: number;
	readonly because: string;
	readonly place: string;
}

/** An entry of the evidence that does not fit the leading fault, to be looked at once more as a new occasion. */
export interface Contradiction {
	readonly text: string;
	/** Number of the occasion it stands in. */
	readonly occasion: number;
	readonly entry: Entry;
}

/** One entry of an occasion. */
export type Entry =
	| { readonly kind: "code"; readonly code: string }
	| { readonly kind: "unit"; readonly unit: string }
	| { readonly kind: "function"; readonly function: string }
	| { readonly kind: "reading"; readonly question: Question }
	| { readonly kind: "bench"; readonly part: string };

export interface Found {
	/** Most probable first. */
	readonly faults: readonly RankedFault[];
	/** Posterior that the loom is sound. */
	readonly sound: number;
	/** Nothing more need be measured: one group of faults that look alike holds nearly all belief, or no reading tells more. */
	readonly settled: boolean;
	/** What readings could still tell, in bits: at yes or no each, so many readings to go. */
	readonly bits: number;
	/** Best reading to take next; offered also once it is settled, where some reading still tells something. */
	readonly next: NextStep | undefined;
	/** Other steps worth taking, best first. */
	readonly others: readonly NextStep[];
	/** Connectors and relays worth reseating, best first. */
	readonly actions: readonly NextAction[];
	/** Evidence that no considered fault explains, and which entry to repeat. */
	readonly contradictions: readonly string[];
	/** The entries that do not fit the leading fault. */
	readonly repeat: readonly Contradiction[];
	/** How many hypotheses were compared, by sort. */
	readonly considered: { readonly singles: number; readonly common: number; readonly pairs: number };
}

/** One thing on a fault's path, for the drawing. */
export interface PathPoint {
	readonly id: string;
	readonly what: "contact" | "wire" | "joint" | "part";
	readonly text: string;
	readonly place: string;
}

/** What a meter would show if the fault is there. */
export interface Predicted {
	readonly question: Question;
	/** What was read; undefined where it was not taken. */
	readonly value: number | "open" | undefined;
	/** Ways it may show, likeliest first. */
	readonly shows: readonly { readonly text: string; readonly chance: number }[];
	/** What it shows on a sound car. */
	readonly sound: string;
}

/** A reading not yet taken that would speak against the fault. */
export interface Refutation {
	readonly question: Question;
	/** What it would have to show, in words. */
	readonly text: string;
	/** Chance that it shows so if not this fault but another is there. */
	readonly chance: number;
}

/** Why a fault is suspected, and what would settle it. */
export interface Explanation {
	readonly id: string;
	readonly where: string;
	/** Contacts, wires, joints and parts concerned, in order. */
	readonly path: readonly PathPoint[];
	readonly taken: readonly Predicted[];
	/** Readings worth taking, best first. */
	readonly notTaken: readonly Predicted[];
	/** Most telling first. */
	readonly refutes: readonly Refutation[];
	/** Entries already there that do not fit it. */
	readonly against: readonly Contradiction[];
}

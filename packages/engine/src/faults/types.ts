/** One thing wrong with a loom: what it does to the network, how likely it is, what would mend it. */
import type { Change, Circuit } from "../circuit/index.js";
import type { Loom } from "../loom/index.js";
import type { Touched } from "../recipe/index.js";

/** One way in which a fault can show itself. */
export interface Pattern {
	/** Chance of this way, given the fault; a fault's weights sum to 1. */
	readonly weight: number;
	readonly change: Change;
}

export interface Fault {
	/** Stable id, e.g. `open:wire:W12`. */
	readonly id: string;
	/** Kind of fault in words. */
	readonly kind: string;
	/** What and where, in words. */
	readonly where: string;
	readonly place: string;
	/** Chance that this is wrong on a car just worked on, before any evidence. */
	readonly prior: number;
	readonly patterns: readonly Pattern[];
	/**
	 * Connector or relay whose reseating throws the dice again: afterwards the fault shows itself in another
	 * of its patterns, or not at all. Empty for a steady fault.
	 */
	readonly shakenBy: string;
	/** Share of such faults that are there at one time and not at another with nothing done to the car; left out: none. */
	readonly comesAndGoes?: number;
	/** Parts that would fail a bench test because of it. */
	readonly inParts: readonly string[];
	/** Contacts, wires, joints and parts concerned, in order. */
	readonly path: readonly string[];
	readonly mend: string;
}

/** What the kinds look at to list their faults. */
export interface FaultContext {
	readonly circuit: Circuit;
	readonly loom: Loom;
	/** What the recipe worked on; empty maps for a car as delivered. */
	readonly touched: Touched;
	/**
	 * Plugs will be pulled: what touches a wire must then lie at the loom's own terminal and stay with the wire.
	 * Without it, at the part's pin, one mated contact away, which leaves the terminal inside its run.
	 */
	readonly plugsOff?: boolean;
	/** Recipe step names and titles, for 'step left out'. */
	readonly steps: ReadonlyMap<
		string,
		{ readonly kind: string; readonly title: string; readonly place: string }
	>;
}

/** A kind of fault: one file, with its source for how often it happens. */
export interface FaultKind {
	readonly kind: string;
	readonly title: string;
	/** Where its rate comes from. */
	readonly source: string;
	list(context: FaultContext): Fault[];
}

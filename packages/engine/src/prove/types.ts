/** The sheet of readings taken before power, as data. */
import type { Circuit } from "../circuit/index.js";
import type { FaultyCar } from "../faults/index.js";
import type { Question } from "../readings/index.js";

/** What proving needs of an opened car. */
export interface Provable extends FaultyCar {
	circuit(which: "converted"): Circuit;
}

export interface SheetOptions {
	/** Added resistance, in ohms, from which on a poor connection is to be caught. Default 1. */
	readonly leastOhms?: number;
	/** Faults less likely than this before any evidence are left out. Default 0: none is. */
	readonly leastPrior?: number;
}

/** A reading that may be taken: an ohm question, the battery off. */
export interface Candidate extends Question {
	readonly what: "ohms";
	/** Number of the phase in which it is taken. */
	readonly phase: number;
}

/** How the car stands for a part of the sheet. */
export interface Phase {
	/** The condition, listed or said in place. */
	readonly when: string;
	/** In words. */
	readonly title: string;
	/** What is done to bring the car there from the phase before. */
	readonly prepare: readonly string[];
	readonly cautions: readonly string[];
}

export interface SheetRow {
	/** Number on the sheet, from 1. */
	readonly number: number;
	readonly question: Question;
	/** The two points in words. */
	readonly from: string;
	readonly to: string;
	/** Ohms to expect; undefined: open. */
	readonly value: number | undefined;
	/** Pass limits in ohms, the band of a sound car with the meter's own limit. For an open reading low is `LEAST_OPEN`, high undefined. */
	readonly low: number;
	readonly high: number | undefined;
	/** Ids of the faults it catches. */
	readonly catches: readonly string[];
	/** Where the first point is; `toPlace` where the second one is. */
	readonly place: string;
	readonly toPlace: string;
	readonly cautions: readonly string[];
}

/** Rows taken with the car standing one way. */
export interface SheetPart extends Phase {
	readonly rows: readonly SheetRow[];
}

export type MissReason =
	| "restraint or high-voltage circuit"
	| "only shows under power"
	| "nothing to measure behind it"
	| "joins what is joined already"
	| "no reading leaves its band";

/** A fault, or one contact of it, that no reading before power catches. */
export interface Miss {
	readonly id: string;
	readonly kind: string;
	readonly where: string;
	readonly reason: MissReason;
	/** In one sentence. */
	readonly why: string;
	/** Contacts concerned, where others of the same fault are caught. Empty: the whole fault. */
	readonly only: readonly string[];
	/** For added resistance: from so many ohms on the sheet catches it after all; undefined: never, or not asked. */
	readonly caughtFrom: number | undefined;
}

export interface Coverage {
	/** Faults considered. */
	readonly faults: number;
	/** Of these, those that some offered reading would catch. */
	readonly detectable: number;
	/** Of these, those that the sheet catches in every way that some offered reading would. */
	readonly caught: number;
}

export interface ProveSheet {
	readonly leastOhms: number;
	readonly parts: readonly SheetPart[];
	readonly readings: number;
	/** No set of the offered readings that catches as much is smaller than this. */
	readonly lowerBound: number;
	/** Readings that were offered to choose from. */
	readonly offered: number;
	readonly coverage: Coverage;
	readonly missed: readonly Miss[];
	/** Times that a lead is taken to another place. */
	readonly placeChanges: number;
}

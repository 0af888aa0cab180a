/** The staged power-up, as data. */
import type { Question } from "../../readings/index.js";

/** What to read in a stage, and between which limits it must lie. */
export interface StageReading {
	/** As finding takes it; undefined where the test lamp is in the line, which no condition says. */
	readonly question: Question | undefined;
	/** The two points in words, with their places. */
	readonly from: string;
	readonly to: string;
	/** Undefined: nothing joins the points. A voltmeter then shows next to nothing, an ohmmeter open. */
	readonly value: number | undefined;
	readonly low: number;
	/** Undefined: no upper limit. */
	readonly high: number | undefined;
	readonly unit: "V" | "A" | "ohm";
	readonly place: string;
}

export type StageKind =
	| "before power"
	| "test lamp"
	| "battery"
	| "fuse"
	| "key on"
	| "start inhibited"
	| "crank"
	| "restraints";

export interface Stage {
	/** From 0. */
	readonly number: number;
	readonly kind: StageKind;
	readonly title: string;
	/** What is done, in order. */
	readonly connect: readonly string[];
	readonly read: readonly StageReading[];
	/** What must be true before going on, besides readings inside their limits. */
	readonly mustBeTrue: readonly string[];
	/** Parts that become live in this stage, by id. */
	readonly live: readonly string[];
	/** What may be counted on while this stage stands. */
	readonly safe: readonly string[];
	readonly cautions: readonly string[];
}

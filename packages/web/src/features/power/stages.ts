/** Stages of the power-up with what was read and seen in each, and the gate between one and the next. */
import type { Stage, StageReading } from "@loomwright/engine";
import { count } from "../../shared/words.js";
import type { Act } from "../find/acts.js";
import type { Proving } from "../find/use-case.js";
import { passes, type Shown } from "../meter/band.js";

export interface PowerWork {
	/** By reading's key. */
	readonly read: Readonly<Record<string, Shown>>;
	/** Keys of what was seen to be true. */
	readonly seen: readonly string[];
	/** Titles of the stages that a person has left behind. */
	readonly passed: readonly string[];
}

/** By words, so that stages computed anew keep what was done where they say the same. */
export const readingKey = (stage: Stage, { unit, from, to }: StageReading): string =>
	`${stage.title} | ${unit} ${from} | ${to}`;

export const seenKey = (stage: Stage, text: string): string => `${stage.title} | ${text}`;

/** Must it be ticked? That the prove sheet passes is known from the sheet itself. */
const ticked = (stage: Stage): readonly string[] => (stage.kind === "before power" ? [] : stage.mustBeTrue);

/** What still stands in the way of the next stage, in words; none where all holds. */
export function missing(stage: Stage, { read, seen }: PowerWork, proved: boolean): string[] {
	const shown = stage.read.map((reading) => ({ reading, value: read[readingKey(stage, reading)] }));
	const unread = shown.filter(({ value }) => value === undefined).length;
	const wrong = shown.filter(({ reading, value }) => value !== undefined && !passes(reading, value)).length;
	const unseen = ticked(stage).filter((text) => !seen.includes(seenKey(stage, text))).length;
	return [
		...(stage.kind === "before power" && !proved ? ["the prove sheet is not through"] : []),
		...(wrong > 0 ? [count(wrong, "reading is not right", "readings are not right")] : []),
		...(unread > 0 ? [count(unread, "reading to take", "readings to take")] : []),
		...(unseen > 0 ? [count(unseen, "thing to see", "things to see")] : []),
	];
}

/** Place of the first stage that does not hold or was not left behind; the number of stages where there is none. */
export function reached(stages: readonly Stage[], work: PowerWork, proved: boolean): number {
	const at = stages.findIndex(
		(stage) => !work.passed.includes(stage.title) || missing(stage, work, proved).length > 0,
	);
	return at < 0 ? stages.length : at;
}

/** With fuses still out, readings of the whole car under power would connect what is not proved yet. */
export const provingIn = ({ kind }: Stage): Proving =>
	kind === "start inhibited" || kind === "crank" || kind === "restraints" ? "under power" : "battery off";

/** What was read in a stage, as the finder takes it. */
export function actsOfStage(stage: Stage, { read }: PowerWork): Act[] {
	const readings = stage.read.flatMap((reading): Act[] => {
		const value = read[readingKey(stage, reading)];
		return reading.question && value !== undefined
			? [{ kind: "reading", body: { ...reading.question, value } }]
			: [];
	});
	return readings.length === 0
		? []
		: [{ kind: "occasion", body: { note: `power-up: ${stage.title}` } }, ...readings];
}

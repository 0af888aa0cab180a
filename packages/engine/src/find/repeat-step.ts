/** The step that is next where a reading fits no fault better than a slip: to take it once more. */
import type { Circuit } from "../circuit/index.js";
import { cautionsOf, minutesOf, stepText } from "./next-step.js";
import type { NextStep, TakenReading } from "./types.js";
import type { Weighed } from "./weighing.js";

/**
 * @param reading that does not fit
 * @param weighed all hypotheses, the sound loom first
 * @param last the reading taken before this one
 */
export function repeatStep(
	circuit: Circuit,
	reading: TakenReading,
	weighed: readonly Weighed[],
	last: TakenReading | undefined,
): NextStep {
	const { what, from, to, when, value } = reading;
	const question = { what, from, to, when };
	const sound = weighed[0]!.posterior;
	const leading = weighed[1]?.fault?.where ?? "a fault";
	const shown = value === "open" ? "open" : `${Number(value.toPrecision(3))} ${UNITS[what]}`;
	return {
		question,
		text: `Once more: ${stepText(circuit, question)}`,
		bits: entropy(sound),
		minutes: minutesOf(circuit, question, last),
		because: `it showed ${shown}, which a sound loom does not; a slip of the leads is still likelier than any fault, until it shows the same again.`,
		outcomes: [
			{ text: `${shown} again`, chance: 1 - sound, favours: leading },
			{ text: "what a sound loom shows", chance: sound, favours: "a sound loom" },
		],
		cautions: cautionsOf(circuit, question),
		again: true,
	};
}

const UNITS = { volts: "V", drop: "V", ohms: "ohm", amps: "A" } as const;

/** Bits of an outcome that comes with this chance or does not. */
function entropy(chance: number): number {
	if (chance <= 0 || chance >= 1) return 0;
	return -chance * Math.log2(chance) - (1 - chance) * Math.log2(1 - chance);
}

/** The step that is next where a reading fits no fault better than a slip: to take it once more. */
import type { Circuit } from "../circuit/index.js";
import { entropy } from "./entropy.js";
import { valueText } from "./items.js";
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
	const shown = valueText(what, value);
	return {
		question,
		text: `Once more: ${stepText(circuit, question)}`,
		bits: entropy([sound, 1 - sound]),
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

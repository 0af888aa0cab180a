/** Predictions of a fault in words, and which of them tell it from a sound car. */
import type { Explanation } from "@loomwright/engine";
import { percent } from "../../shared/words.js";

export type Predicted = Explanation["taken"][number];

/** Ways of showing less likely than this are not said. */
const RARE = 0.05;

/** `about 5 V`, or `open (80 %) or about 3 ohm (20 %)`. */
export function showsWords({ shows }: Pick<Predicted, "shows">): string {
	const likely = shows.filter(({ chance }, k) => k === 0 || chance >= RARE);
	if (likely.length === 1) return likely[0]!.text;
	return likely.map(({ text, chance }) => `${text} (${percent(chance)})`).join(" or ");
}

/** Those where the fault shows otherwise than a sound car. */
export const telling = (list: readonly Predicted[]): readonly Predicted[] =>
	list.filter(({ shows, sound }) => shows.some(({ text, chance }) => chance >= RARE && text !== sound));

/** Whether what the meter showed lies in the band. */
import type { Reading } from "@loomwright/engine";

export interface Verdict {
	readonly inside: boolean;
	readonly words: string;
}

const INSIDE = "as on a sound car.";
const FIND = "Enter it under Find, with what else was seen, to see which fault explains it.";

export function verdict(
	{ low, high, open }: Pick<Reading, "low" | "high" | "open">,
	shown: number | "open",
): Verdict {
	if (open || low === undefined || high === undefined)
		return shown === "open"
			? { inside: true, words: INSIDE }
			: { inside: false, words: `a sound car shows open here. ${FIND}` };
	if (shown === "open") return { inside: false, words: `a sound car does not show open here. ${FIND}` };
	if (shown >= low && shown <= high) return { inside: true, words: INSIDE };
	return { inside: false, words: `${shown < low ? "below" : "above"} the band of a sound car. ${FIND}` };
}

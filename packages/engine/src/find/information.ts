/** The outcomes of one reading in words: what the meter would show, how likely that is, whom it would favour. */
import type { Question } from "../readings/index.js";
import type { Entries } from "./outcomes.js";
import type { Outcome } from "./types.js";
import type { Weighed } from "./weighing.js";

/** @param values and outcomes one per entry, NaN: open */
export function outcomeWords(
	question: Question,
	{ first, weights }: Entries,
	values: Float64Array,
	outcomes: Uint8Array,
	leading: readonly Weighed[],
): Outcome[] {
	const bins = new Map<number, { low: number; high: number; chance: number; best: number; most: number }>();
	for (let h = 0; h + 1 < first.length; h++) {
		const own = new Map<number, number>();
		for (let e = first[h]!; e < first[h + 1]!; e++) {
			const outcome = outcomes[e]!;
			const value = values[e]!;
			let bin = bins.get(outcome);
			if (bin === undefined) {
				bin = { low: Number.POSITIVE_INFINITY, high: Number.NEGATIVE_INFINITY, chance: 0, best: h, most: 0 };
				bins.set(outcome, bin);
			}
			if (value < bin.low) bin.low = value;
			if (value > bin.high) bin.high = value;
			bin.chance += weights[e]!;
			const mine = (own.get(outcome) ?? 0) + weights[e]!;
			own.set(outcome, mine);
			if (mine > bin.most) {
				bin.most = mine;
				bin.best = h;
			}
		}
	}
	return [...bins.values()]
		.map(({ low, high, chance, best }): Outcome => {
			const favours = leading[best]!.fault?.where ?? "no fault in the loom";
			return { text: rangeText(question, low, high), chance, favours };
		})
		.sort((x, y) => y.chance - x.chance);
}

/** A range of values in words; not finite: open. */
export function rangeText({ what }: Question, lowest: number, highest: number): string {
	if (!Number.isFinite(lowest)) return "open";
	const unit = what === "ohms" ? "ohm" : what === "amps" ? "A" : "V";
	const show = (x: number) => (Math.abs(x) < 0.05 ? "0" : String(Number(x.toPrecision(3))));
	const low = show(lowest);
	const high = show(highest);
	return low === high ? `about ${low} ${unit}` : `${low} to ${high} ${unit}`;
}

/** What a step works on, in one line. */
import type { RecipeStep } from "@loomwright/engine";
import { lengthWords } from "../../shared/wire-words.js";

export function stepWords(step: RecipeStep): string {
	const { wire, other, at, from, to, part, fresh, joint, mm2, colours, metres } = step;
	const where =
		at === undefined ? "" : typeof at === "string" ? ` at its ${at} end` : ` at ${lengthWords(at.metres)}`;
	const made = [
		colours.join(""),
		mm2 === undefined ? "" : `${mm2} mm²`,
		metres === undefined ? "" : lengthWords(metres),
	]
		.filter(Boolean)
		.join(", ");
	return [
		part,
		wire && `wire ${wire}${where}`,
		other && `with wire ${other}`,
		from && `from ${from}`,
		to && `to ${to}`,
		fresh && `new wire ${fresh}${made && ` (${made})`}`,
		joint && `splice ${joint}`,
	]
		.filter(Boolean)
		.join(", ");
}

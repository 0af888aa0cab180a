/** A reading in one line. */
import type { Reading } from "@loomwright/engine";
import { amount } from "./words.js";

/** `12.4 V (12.2 V to 12.6 V)`, or `open`. */
export function readingWords({ value, low, high, unit, open }: Reading): string {
	if (open || value === undefined) return "open";
	const band =
		low === undefined || high === undefined ? "" : ` (${amount(low, unit)} to ${amount(high, unit)})`;
	return `${amount(value, unit)}${band}`;
}

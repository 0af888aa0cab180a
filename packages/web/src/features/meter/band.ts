/** Limits within which a reading passes, in words, and whether it does. */
import { amount, type Unit } from "../../shared/words.js";

/** What a meter showed, in volts, amperes or ohms. */
export type Shown = number | "open";

export interface Band {
	/** On a sound car; undefined: open, or of volts: fed by nothing. */
	readonly value: number | undefined;
	readonly low: number;
	/** Undefined: no upper limit. */
	readonly high: number | undefined;
	readonly unit: Unit;
}

/** The same rule by which the engine judges a row of the prove sheet. */
export function passes({ low, high }: Pick<Band, "low" | "high">, shown: Shown): boolean {
	const value = shown === "open" ? Number.POSITIVE_INFINITY : shown;
	return value >= low && value <= (high ?? Number.POSITIVE_INFINITY);
}

/** `78.2 Ω to 96.6 Ω`, `0.13 Ω or less`, `open`. */
export function bandWords({ value, low, high, unit }: Band): string {
	if (high === undefined) return value === undefined ? "open" : `${amount(low, unit)} or more`;
	// Equal but for rounding: the same to either side of nothing.
	if (Math.abs(low + high) < 0.01 * high) return `0, give or take ${amount(high, unit)}`;
	return low === 0 ? `${amount(high, unit)} or less` : `${amount(low, unit)} to ${amount(high, unit)}`;
}

/** What else counts as open, said where open is wanted. */
export const openWords = ({ low, high, unit }: Band): string =>
	high === undefined ? `${amount(low, unit)} or more also counts as open` : "";

export const shownWords = (shown: Shown, unit: Unit): string =>
	shown === "open" ? "open" : amount(shown, unit);

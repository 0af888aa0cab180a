/** What a reading has to show, in words. */
import { quantity, type Unit } from "./quantity.js";
import { GLUE } from "./wrap.js";

interface Band {
	readonly value: number | null;
	readonly low: number;
	/** Null: no upper limit. */
	readonly high: number | null;
	readonly unit: Unit;
}

/** `78.2 ohm to 96.7 ohm`, `0.13 ohm or less`, `0.1 A or less, either way`; `open` for ohms without an upper limit. */
export function bandText({ value, low, high, unit }: Band): string {
	const words = (limit: number) => shown(limit, unit).replaceAll(" ", GLUE);
	if (high === null) return value === null ? "open" : `${words(low)} or more`;
	// Equal but for rounding: the same band to either side of nothing.
	if (Math.abs(low + high) < 0.01 * high) return `${words(high)} or less, either way`;
	return low === 0 ? `${words(high)} or less` : `${words(low)} to ${words(high)}`;
}

/** Ohmmeters of a workshop show small ohms with decimals, not as milliohms. */
const shown = (value: number, unit: Unit): string =>
	unit === "ohm" && value < 1 ? `${Number(value.toFixed(2))} ohm` : quantity(value, unit);

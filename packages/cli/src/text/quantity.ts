/** Quantities in words a meter uses: `12.45 V`, `2.1 mV`, `4.45 kohm`. */
export type Unit = "V" | "A" | "ohm";

const STEPS = [
	{ prefix: "M", factor: 1e6 },
	{ prefix: "k", factor: 1e3 },
	{ prefix: "", factor: 1 },
	{ prefix: "m", factor: 1e-3 },
] as const;

/** Below this, in the unit, nothing but zero is shown: no workshop meter resolves it. */
const SMALLEST = 5e-5;

/** Four digits at most, with the unit's prefix; `open` for null. Of ohms only k and M are used, milli below one. */
export function quantity(value: number | null, unit: Unit): string {
	if (value === null) return "open";
	const size = Math.abs(value);
	if (size < SMALLEST) return `0 ${unit}`;
	// Rounded first: 999.96 mV is 1 V.
	const rounded = Number(size.toPrecision(4));
	const step = STEPS.find(({ factor }) => rounded >= factor) ?? STEPS[3];
	const digits = step.factor === 1e-3 ? 1 : Math.max(0, 3 - Math.floor(Math.log10(rounded / step.factor)));
	const shown = Number((size / step.factor).toFixed(Math.min(digits, 3)));
	return `${value < 0 ? "-" : ""}${shown} ${step.prefix}${unit}`;
}

/** A share as a percentage: `63 %`, `4.2 %`, `0.03 %`. */
export function percent(share: number): string {
	const value = share * 100;
	if (value !== 0 && value < 0.01) return "under 0.01 %";
	return `${Number(value.toPrecision(value >= 10 ? 3 : 2))} %`;
}

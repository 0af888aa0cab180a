/** Numbers and names in plain words. */

/** `1 wire`, `3 wires`. */
export const count = (n: number, one: string, many = `${one}s`): string => `${n} ${n === 1 ? one : many}`;

export type Unit = "V" | "A" | "ohm";

/** A unit with the prefix that suits a size. */
export interface Scale {
	/** As a meter shows it: `kΩ`, `mV`. */
	readonly word: string;
	/** Units per scaled unit: 1000 for `kΩ`. */
	readonly by: number;
}

/** Largest first. */
export const SCALES: Readonly<Record<Unit, readonly Scale[]>> = {
	ohm: [
		{ word: "MΩ", by: 1e6 },
		{ word: "kΩ", by: 1e3 },
		{ word: "Ω", by: 1 },
	],
	V: [
		{ word: "V", by: 1 },
		{ word: "mV", by: 1e-3 },
	],
	A: [
		{ word: "A", by: 1 },
		{ word: "mA", by: 1e-3 },
		{ word: "µA", by: 1e-6 },
	],
};

/** The largest prefix in which the size is at least 1; else the smallest, and for nothing the plain unit. */
export function scaleOf(size: number, unit: Unit): Scale {
	const scales = SCALES[unit];
	const plain = scales.find(({ by }) => by === 1)!;
	if (size < 1e-8) return plain;
	return scales.find(({ by }) => size >= by) ?? scales.at(-1)!;
}

/** Three significant figures with the prefix a meter would show: `47.0 kΩ`, `-35.2 mV`. */
export function amount(value: number, unit: Unit): string {
	const { by, word } = scaleOf(Math.abs(value), unit);
	return `${figures(value / by)} ${word}`;
}

/** Three significant figures without an exponent; what rounds to nothing is 0. */
export function figures(value: number): string {
	const size = Math.abs(value);
	if (size < 5e-4) return "0";
	const decimals = size >= 100 ? 0 : size >= 10 ? 1 : size >= 1 ? 2 : 3;
	return value.toFixed(decimals);
}

/** `1 h 25 min`, `40 min`. */
export function duration(minutes: number): string {
	const whole = Math.round(minutes);
	const hours = Math.floor(whole / 60);
	if (hours === 0) return `${whole} min`;
	return whole % 60 === 0 ? `${hours} h` : `${hours} h ${whole % 60} min`;
}

/** A share as percent; tiny ones are told as such, never as 0. */
export function percent(share: number): string {
	if (share > 0 && share < 0.001) return "< 0.1 %";
	if (share > 0.999 && share < 1) return "> 99.9 %";
	return `${(100 * share).toFixed(share < 0.1 ? 1 : 0)} %`;
}

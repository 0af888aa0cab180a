import { decimalComma, parseNumber } from "./number.js";
import { bad, good, type Parsed } from "./parsed.js";

/** Smallest and largest conductor taken for a wire of a car, in mm2: AWG 40 is 0.005, starter cables end at 120. */
const SIZE_LIMITS_MM2 = { least: 0.005, most: 240 } as const;

const WANTED = "a cross-section such as 0.75, 0.75 mm2, 18 AWG or 2/0 AWG (a bare number is mm2)";

/**
 * Diameter in mm of American wire gauge n (1/0 is 0, 2/0 is -1, 3/0 is -2, 4/0 is -3).
 * ASTM B258: d = 0.127 mm x 92^((36 - n) / 39).
 */
export function awgDiameterMm(n: number): number {
	return 0.127 * 92 ** ((36 - n) / 39);
}

/** Cross-section in mm2 of a solid round conductor of gauge n. */
export function awgMm2(n: number): number {
	return (Math.PI / 4) * awgDiameterMm(n) ** 2;
}

/** The gauge whose solid cross-section is nearest in ratio, for showing beside mm2; `4/0` to `40`. */
export function nearestAwg(mm2: number): string {
	const diameter = Math.sqrt((4 * mm2) / Math.PI);
	const n = Math.round(36 - (39 * Math.log(diameter / 0.127)) / Math.log(92));
	const clamped = Math.min(40, Math.max(-3, n));
	return clamped > 0 ? String(clamped) : `${1 - clamped}/0`;
}

/** Gauge number out of `18`, `1/0` .. `4/0` or `0` .. `0000`; undefined if it is none. */
function gaugeNumber(text: string): number | undefined {
	const aught = /^([1-4])\/0$/.exec(text);
	if (aught) return 1 - Number(aught[1]);
	if (/^0{1,4}$/.test(text)) return 1 - text.length;
	const n = /^\d{1,2}$/.test(text) ? Number(text) : Number.NaN;
	return n >= 1 && n <= 40 ? n : undefined;
}

/** Cross-section in mm2 out of `0.75`, `0.75 mm2`, `0.75 mm²`, `18 AWG`, `AWG 18`, `2/0 AWG`. */
export function parseSize(text: string): Parsed<number> {
	const trimmed = text.trim();
	const gauge = /^([\d/]+)\s*awg$/i.exec(trimmed) ?? /^awg\s*([\d/]+)$/i.exec(trimmed);
	if (gauge) {
		const n = gaugeNumber(gauge[1]!);
		return n === undefined
			? bad(`"${text}" is not an American wire gauge`, "a gauge from 4/0 to 40, e.g. 18 AWG")
			: good(awgMm2(n));
	}
	const bare = trimmed.replace(/\s?(mm2|mm²|mm\^2|qmm)$/i, "");
	const number = parseNumber(bare);
	if (!number.ok) return decimalComma(bare) ?? bad(`"${text}" is not a wire size`, WANTED);
	if (number.value < SIZE_LIMITS_MM2.least || number.value > SIZE_LIMITS_MM2.most) {
		return bad(
			`"${text}" is no size of a wire`,
			`${SIZE_LIMITS_MM2.least} to ${SIZE_LIMITS_MM2.most} mm2; ${WANTED}`,
		);
	}
	return good(number.value);
}

/** The size as it is written in tables, e.g. `0.75 mm2`; reads back to the same number. */
export function formatSize(mm2: number): string {
	return `${mm2} mm2`;
}

import { decimalComma, parseNumber } from "./number.js";
import { bad, good, type Parsed } from "./parsed.js";

/**
 * Each unit of length as a fraction of a metre, so that decimal input converts with one rounding.
 * Inch and foot are exact: 25.4 mm and 304.8 mm (international yard and pound agreement, 1959).
 */
const PER_METRE: Readonly<Record<string, readonly [times: number, over: number]>> = {
	m: [1, 1],
	cm: [1, 100],
	mm: [1, 1000],
	in: [254, 10000],
	ft: [3048, 10000],
};

/** Longer than any wire in a car: more likely millimetres written without their unit. */
const LONGEST_METRES = 100;

const WANTED = "a length such as 1.2 m, 850 mm, 85 cm, 47 in or 4 ft (a bare number is metres)";

/** A length in metres out of `1.2 m`, `850 mm`, `85 cm`, `47 in`, `4 ft` or a bare number of metres; never below 0. */
export function parseLength(text: string): Parsed<number> {
	const match = /^(.{0,40}?)\s?([a-z]*)$/i.exec(text.trim());
	if (!match?.[1]) return bad(`"${text}" is not a length`, WANTED);
	const number = parseNumber(match[1]);
	if (!number.ok) return decimalComma(match[1]) ?? bad(`"${text}" is not a length`, WANTED);
	const unit = match[2] || "m";
	const factor = Object.hasOwn(PER_METRE, unit) ? PER_METRE[unit] : undefined;
	if (!factor) return bad(`"${text}" has no unit of length known here`, WANTED);
	const metres = (number.value * factor[0]) / factor[1];
	if (metres < 0) return bad(`"${text}" is below zero`, WANTED);
	if (metres > LONGEST_METRES) {
		return bad(
			`"${text}" is ${metres} m, longer than any wire in a car`,
			`at most ${LONGEST_METRES} m; ${WANTED}`,
		);
	}
	return good(metres);
}

/** The length as it is written in tables, e.g. `1.2 m`; reads back to the same number. */
export function formatLength(metres: number): string {
	return `${metres} m`;
}

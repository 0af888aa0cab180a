import { bad, type Parsed, parseNumber } from "../units/index.js";

/** Minutes of work, from 0 on. */
export function parseMinutes(text: string): Parsed<number> {
	const minutes = parseNumber(text);
	return minutes.ok && minutes.value < 0
		? bad(`"${text}" is below zero`, "minutes of work, e.g. 15")
		: minutes;
}

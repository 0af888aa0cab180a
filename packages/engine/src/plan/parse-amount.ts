/** Amounts in cells. */
import { bad, type Parsed, parseNumber } from "../units/index.js";

/** A number that is not below zero. */
export function parseAmount(text: string): Parsed<number> {
	const number = parseNumber(text);
	return number.ok && number.value < 0 ? bad(`"${text}" is below zero`, "0 or more") : number;
}

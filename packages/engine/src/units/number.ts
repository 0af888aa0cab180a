import { bad, good, type Parsed } from "./parsed.js";

const NUMBER = /^[+-]?(\d+(\.\d*)?|\.\d+)([eE][+-]?\d{1,3})?$/;

/** A plain decimal number with a point, e.g. `12`, `-0.5`, `1e-3`. Never infinite, never NaN. */
export function parseNumber(text: string): Parsed<number> {
	const trimmed = text.trim();
	if (NUMBER.test(trimmed)) {
		const value = Number(trimmed);
		if (Number.isFinite(value)) return good(value);
	}
	return (
		decimalComma(text) ?? bad(`"${text}" is not a number`, "a number with a decimal point, e.g. 12 or 0.5")
	);
}

/** The fault of a number written with a decimal comma; undefined for any other text. */
export function decimalComma(text: string): Parsed<never> | undefined {
	const trimmed = text.trim();
	if (!/^[+-]?\d+,\d+$/.test(trimmed)) return undefined;
	return bad(`"${text}" has a decimal comma`, `a decimal point: ${trimmed.replace(",", ".")}`);
}

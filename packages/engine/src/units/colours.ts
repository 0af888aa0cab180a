/**
 * Wire colours after IEC 60757 with the usual German and English short forms.
 *
 * Codes and German short forms: reference/electrical/colour-codes.csv (IEC 60757, DIN 47002).
 * Marked "from memory": `li` for violet. English short forms and full names: common practice, no source.
 */

export interface Colour {
	/** IEC 60757 letter code. */
	readonly code: string;
	readonly english: string;
	/** sRGB for drawing, a choice of this project: told apart on light and on dark ground. */
	readonly hex: string;
	readonly german: readonly string[];
	readonly short: readonly string[];
	readonly names: readonly string[];
}

function colour(code: string, hex: string, german: string, short: string, names: string): Colour {
	const words = names.split(" ");
	return {
		code,
		hex,
		english: words[0]!,
		german: german.split(" ").filter(Boolean),
		short: short.split(" ").filter(Boolean),
		names: words,
	};
}

/** Every colour with a code of its own. The two-colour code GNYE is two entries. */
export const COLOURS: readonly Colour[] = [
	colour("BK", "#2b2b2e", "sw", "blk", "black schwarz"),
	colour("BN", "#8a5a33", "br", "brn", "brown braun"),
	colour("RD", "#d0342c", "rt", "red", "red rot"),
	colour("OG", "#ef8a1d", "or", "org orn", "orange"),
	colour("YE", "#f2cf2e", "ge", "yel", "yellow gelb"),
	colour("GN", "#3a9a4b", "gn", "grn", "green grün gruen"),
	colour("BU", "#2f6fc4", "bl", "blu", "blue blau"),
	colour("VT", "#8450a8", "vi li", "vio pur ppl", "violet purple violett lila"),
	colour("GY", "#8e9499", "gr", "gry gra", "grey gray grau"),
	colour("WH", "#f4f4f0", "ws", "wht", "white weiß weiss"),
	colour("PK", "#f0a0b8", "rs", "pnk", "pink rosa"),
	colour("TQ", "#2fb5b5", "tk", "trq tur", "turquoise türkis tuerkis"),
	colour("GD", "#c9a53c", "", "gld", "gold"),
	colour("SR", "#b9bec4", "", "sil slv", "silver silber"),
];

const BY_CODE: ReadonlyMap<string, Colour> = new Map(COLOURS.map((c) => [c.code, c]));

/** The colour of an IEC 60757 code; undefined for a code not in the standard. */
export function colourOf(code: string): Colour | undefined {
	return BY_CODE.get(code);
}

/** sRGB `#rrggbb` to draw an IEC 60757 code with; a neutral mid grey where the code is unknown or empty. */
export function colourHex(code: string): string {
	return BY_CODE.get(code)?.hex ?? "#a0a4a8";
}

/** Codes as they are written in tables and on cards: `["BK", "WH"]` is `BKWH`. */
export function formatColours(codes: readonly string[]): string {
	return codes.join("");
}

/** Codes in words, base colour first: `["BK", "WH"]` is `black/white`. */
export function colourWords(codes: readonly string[]): string {
	return codes.map((code) => BY_CODE.get(code)?.english ?? code).join("/");
}

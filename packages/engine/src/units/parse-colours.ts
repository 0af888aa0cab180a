import { COLOURS, type Colour } from "./colours.js";
import { bad, good, type Parsed } from "./parsed.js";

/** Base colour and at most two stripes. */
const MOST_COLOURS = 3;

const WANTED = `IEC 60757 codes, base colour first, e.g. BK, BKWH or BK/WH (${COLOURS.map((c) => c.code).join(" ")})`;

/**
 * The families of spellings, each tried alone: `BL`, `GR` and `BR` mean different colours in
 * German and in English, so a cell is never read half by one and half by the other.
 */
const FAMILIES = [family((c) => [c.code, ...c.short, ...c.names]), family((c) => [...c.german, ...c.names])];

function family(words: (colour: Colour) => readonly string[]): ReadonlyMap<string, string> {
	return new Map(COLOURS.flatMap((c) => words(c).map((word) => [word.toLowerCase(), c.code] as const)));
}

/**
 * IEC 60757 codes out of one cell: `BKWH`, `BK/WH`, `sw/ws`, `sw-ws`, `blk-wht`, `black/white`, `GNYE`.
 * The empty text is the empty list: colour not known.
 */
export function parseColours(text: string): Parsed<readonly string[]> {
	const tokens = text
		.toLowerCase()
		.split(/[\s/.+-]+/)
		.filter(Boolean);
	if (text.trim() === "") return good([]);
	for (const words of FAMILIES) {
		const pieces = tokens.map((token) => split(token, words));
		const codes = pieces.flatMap((piece) => piece ?? []);
		if (codes.length > 0 && !pieces.includes(undefined)) return check(text, codes);
	}
	return bad(`"${text}" is not a wire colour`, hint(tokens));
}

/** The codes of a word, or of equal two- or three-letter pieces written together; undefined if it is none. */
function split(token: string, words: ReadonlyMap<string, string>): readonly string[] | undefined {
	const whole = words.get(token);
	if (whole !== undefined) return [whole];
	for (const width of [2, 3]) {
		if (token.length % width !== 0) continue;
		const codes: string[] = [];
		for (let at = 0; at < token.length; at += width) {
			const code = words.get(token.slice(at, at + width));
			if (code === undefined) break;
			codes.push(code);
		}
		if (codes.length * width === token.length) return codes;
	}
	return undefined;
}

function check(text: string, codes: readonly string[]): Parsed<readonly string[]> {
	if (codes.length > MOST_COLOURS) {
		return bad(`"${text}" names ${codes.length} colours`, `at most ${MOST_COLOURS}: base colour and stripes`);
	}
	if (new Set(codes).size < codes.length) {
		return bad(`"${text}" names the same colour twice`, "each colour once, base colour first");
	}
	return good(codes);
}

function hint(tokens: readonly string[]): string {
	if (tokens.length === 0) return WANTED;
	if (tokens.some((t) => /^(lt|dk|light|dark|hell|dunkel|pale)/.test(t))) {
		return "the plain colour (IEC 60757 has no light or dark), e.g. GN; the shade can go into the note";
	}
	if (tokens.some((t) => t.length === 1)) {
		return `two letters: one letter can mean several colours; ${WANTED}`;
	}
	if (tokens.every((t) => FAMILIES.some((words) => split(t, words)))) {
		return `codes of one language, e.g. BUYE, blge or blu/yel: BL, GR and BR differ between them; ${WANTED}`;
	}
	return WANTED;
}

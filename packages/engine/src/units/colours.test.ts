import fc from "fast-check";
import { expect, test } from "vitest";
import { COLOURS, colourHex, colourOf, colourWords, formatColours } from "./colours.js";
import { parseColours } from "./parse-colours.js";
import { reference } from "./reference.test-helper.js";

// Source: IEC 60757 and DIN 47002, reference/electrical/colour-codes.csv.
const TABLE = reference("colour-codes");

function codes(text: string): readonly string[] {
	const parsed = parseColours(text);
	if (!parsed.ok) throw new Error(`${parsed.problem}; ${parsed.wanted}`);
	return parsed.value;
}

test.each(TABLE)("$colour is $iec60757, in German $german_din47002", (row) => {
	const iec = codes(row.iec60757!);
	expect(formatColours(iec)).toBe(row.iec60757);
	expect(colourWords(iec).replace("/", "-")).toBe(row.colour);
	expect(codes(row.colour!)).toEqual(iec);
	if (row.german_din47002) expect(codes(row.german_din47002)).toEqual(iec);
});

test("every colour of the standard's table is known, and no other", () => {
	const single = TABLE.map((row) => row.iec60757!).filter((code) => code.length === 2);
	expect(COLOURS.map((c) => c.code).toSorted()).toEqual(single.toSorted());
});

test.each([
	["BKWH", "BK WH"],
	["BK/WH", "BK WH"],
	["bk wh", "BK WH"],
	["sw/ws", "BK WH"],
	["sw-ws", "BK WH"],
	["swws", "BK WH"],
	["blk-wht", "BK WH"],
	["BLKWHT", "BK WH"],
	["black/white", "BK WH"],
	["Black - White", "BK WH"],
	["schwarz/weiß", "BK WH"],
	["GNYE", "GN YE"],
	["gnge", "GN YE"],
	["grn/yel/red", "GN YE RD"],
	["bl", "BU"],
	["gr/li", "GY VT"],
	["gray", "GY"],
	["", ""],
	["  ", ""],
])("%s is %s", (text, expected) => {
	expect(codes(text).join(" ")).toBe(expected);
});

test.each([
	["B", "one letter"],
	["LT GRN", "light or dark"],
	["hellblau", "light or dark"],
	["BKBK", "each colour once"],
	["BK/WH/RD/GN", "at most 3"],
	["bl/ye", "one language"],
	["XX", "IEC 60757"],
	["/", "IEC 60757"],
	["BKW", "IEC 60757"],
	["constructor", "IEC 60757"],
])("%s is refused: %s", (text, wanted) => {
	const parsed = parseColours(text);
	expect(parsed.ok ? parsed.value : parsed.wanted).toContain(wanted);
});

test("any one to three different colours read back as written", () => {
	const codeLists = fc.uniqueArray(fc.constantFrom(...COLOURS.map((c) => c.code)), { maxLength: 3 });
	fc.assert(
		fc.property(codeLists, fc.constantFrom("", "/", "-", " "), (list, between) => {
			expect(codes(list.join(between))).toEqual(list);
		}),
		{ seed: 60757 },
	);
});

test("any text is either colours of the standard or refused with what is wanted", () => {
	fc.assert(
		fc.property(fc.string(), (text) => {
			const parsed = parseColours(text);
			if (parsed.ok) for (const code of parsed.value) expect(colourOf(code)).toBeDefined();
			else expect(parsed.wanted).not.toBe("");
		}),
		{ seed: 60757 },
	);
});

test("each colour draws with its own sRGB value, an unknown one in grey", () => {
	const values = COLOURS.map((c) => c.hex);
	expect(new Set(values).size).toBe(COLOURS.length);
	for (const value of values) expect(value).toMatch(/^#[0-9a-f]{6}$/);
	expect(colourHex("BU")).toBe(colourOf("BU")!.hex);
	expect(values).not.toContain(colourHex("??"));
});

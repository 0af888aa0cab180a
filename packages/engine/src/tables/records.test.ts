import { parse } from "csv-parse/sync";
import fc from "fast-check";
import { expect, test } from "vitest";
import { splitRecords } from "./records.js";

const RUN = { seed: 4180, numRuns: 1000 };

/** Text of the characters that matter, and a few that do not. */
const awkward = fc
	.array(fc.constantFrom('"', '""', ",", "\n", "\r\n", "\r", "\t", ";", "a", "ü", "😀", " "), {
		maxLength: 30,
	})
	.map((parts) => parts.join(""));

/** Examples of RFC 4180 section 2, rules 1 to 7. */
test.each([
	[
		"aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n",
		[
			["aaa", "bbb", "ccc"],
			["zzz", "yyy", "xxx"],
		],
	],
	[
		"aaa,bbb,ccc\r\nzzz,yyy,xxx",
		[
			["aaa", "bbb", "ccc"],
			["zzz", "yyy", "xxx"],
		],
	],
	[
		'"aaa","bbb","ccc"\r\nzzz,yyy,xxx',
		[
			["aaa", "bbb", "ccc"],
			["zzz", "yyy", "xxx"],
		],
	],
	[
		'"aaa","b\r\nbb","ccc"\r\nzzz,yyy,xxx',
		[
			["aaa", "b\r\nbb", "ccc"],
			["zzz", "yyy", "xxx"],
		],
	],
	['"aaa","b""bb","ccc"', [["aaa", 'b"bb', "ccc"]]],
	["a,\n", [["a", ""]]],
	["a,", [["a", ""]]],
	["", []],
	["a\n\nb", [["a"], [""], ["b"]]],
])("%j", (text, records) => {
	expect(splitRecords(text, ",", false)).toEqual({ records, faults: [] });
});

test("agrees with csv-parse on every text: the same cells, or a fault where it stops", () => {
	fc.assert(
		fc.property(awkward, (text) => {
			let theirs: string[][] | undefined;
			try {
				theirs = parse(text, { relax_column_count: true, record_delimiter: ["\r\n", "\n", "\r"] });
			} catch {
				theirs = undefined;
			}
			const ours = splitRecords(text, ",", false);
			if (theirs === undefined) expect(ours.faults).not.toEqual([]);
			else expect(ours).toEqual({ records: theirs, faults: [] });
		}),
		RUN,
	);
});

test("a quote mark never closed costs its own cell and not the rest of the table", () => {
	const { records, faults } = splitRecords('a,b\n"x,1\ny,2\n', ",", false);
	expect(records).toEqual([
		["a", "b"],
		['"x', "1"],
		["y", "2"],
	]);
	expect(faults).toMatchObject([{ record: 1, cell: 0, problem: expect.stringContaining("never closed") }]);
});

test("all faults are found, each with its cell", () => {
	const { faults } = splitRecords('a,5" hose\n"b" c,"d"\n', ",", false);
	expect(faults.map(({ record, cell }) => [record, cell])).toEqual([
		[0, 1],
		[1, 0],
	]);
});

test("a paste may have bare quote marks, and quoted cells with line ends in them", () => {
	const text = 'a\t5" hose\t"x" y\t"q\r\nr ""s"""\n';
	expect(splitRecords(text, "\t", true)).toEqual({
		records: [["a", '5" hose', '"x" y', 'q\r\nr "s"']],
		faults: [],
	});
});

test("no character is lost or made up, whatever the text", () => {
	const text = fc.oneof(awkward, fc.string({ unit: "binary" }));
	fc.assert(
		fc.property(text, fc.constantFrom(",", "\t", ";"), fc.boolean(), (whole, delimiter, lenient) => {
			const { records } = splitRecords(whole, delimiter, lenient);
			const marks = /["\t,;\r\n]/g;
			expect(records.flat().join("").replace(marks, "")).toBe(whole.replace(marks, ""));
		}),
		RUN,
	);
});

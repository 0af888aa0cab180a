import fc from "fast-check";
import { expect, test } from "vitest";
import type { TableError } from "./errors.js";
import { readTable } from "./read-table.js";
import { writeTable } from "./write-table.js";

const RUN = { seed: 4180, numRuns: 500 };

function read(text: string) {
	const errors: TableError[] = [];
	const { columns, rows } = readTable("t.csv", text, errors);
	return { columns, rows, errors };
}

const EXPECTED = {
	columns: ["wire", "note"],
	rows: [
		["W1", "a"],
		["W2", ""],
	],
	errors: [],
};

test.each([
	["comma", "wire,note\nW1,a\nW2,\n"],
	["byte order mark and CRLF", "\ufeffwire,note\r\nW1,a\r\nW2,\r\n"],
	["old line ends", "wire,note\rW1,a\rW2,"],
	["a tab-separated paste", "wire\tnote\nW1\ta\nW2\t"],
	["semicolons", "wire;note\nW1;a\nW2;\n"],
	["everything quoted", '"wire","note"\n"W1","a"\n"W2",""'],
])("reads %s", (_, text) => {
	expect(read(text)).toEqual(EXPECTED);
});

test("the header decides on the delimiter, not the cells", () => {
	expect(read("part,values\nR1,a=1;b=2;c=3\n").rows).toEqual([["R1", "a=1;b=2;c=3"]]);
	expect(read("part\tvalues\nR1\ta=1,b=2,c=3\n").rows).toEqual([["R1", "a=1,b=2,c=3"]]);
});

test("a fault of quoting names its row and column", () => {
	const { errors } = read('wire,note\n\nW2,5" hose\n');
	expect(errors).toMatchObject([{ file: "t.csv", row: 3, column: "note" }]);
});

test("any table written is read with the same cells", () => {
	const cell = fc.oneof(
		fc.string({ unit: "binary", maxLength: 12 }),
		fc.constantFrom("", " ", '"', '""', ",", "\t", ";", "\r", "\n", "\r\n", "\ufeff", "\ud800", "a;b", " x "),
	);
	const rows = fc
		.integer({ min: 1, max: 6 })
		.chain((width) => fc.array(fc.array(cell, { minLength: width, maxLength: width }), { minLength: 1 }));
	fc.assert(
		fc.property(rows, fc.constantFrom("\r\n" as const, "\n" as const), ([columns, ...body], newline) => {
			const written = writeTable({ columns: columns!, rows: body }, newline);
			expect(read(written)).toEqual({ columns, rows: body, errors: [] });
		}),
		RUN,
	);
});

test("what was read in any form is written in one, without loss", () => {
	fc.assert(
		fc.property(fc.string({ unit: "binary" }), (text) => {
			const { columns, rows } = read(text);
			if (columns.length === 0) return;
			const again = read(writeTable({ columns, rows }));
			expect(again).toEqual({ columns, rows, errors: [] });
		}),
		RUN,
	);
});

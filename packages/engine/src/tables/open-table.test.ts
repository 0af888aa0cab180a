import fc from "fast-check";
import { expect, test } from "vitest";
import { parseNumber } from "../units/index.js";
import { formatTableError, type TableError, TableErrors } from "./errors.js";
import { openTable, type Schema } from "./open-table.js";
import { readTable } from "./read-table.js";

const SCHEMA: Schema<"wire" | "size" | "marks"> = { wire: "required", size: "required", marks: "optional" };

function open(text: string) {
	const errors: TableError[] = [];
	const opened = openTable(readTable("w.csv", text, errors), SCHEMA, errors);
	return { ...opened, errors, lines: errors.map(formatTableError) };
}

test("rows are counted as a spreadsheet does, over empty ones and line ends in cells", () => {
	const { rows, errors } = open('wire,size,marks\n\n"W\n1",1,\n,,\nW2,2,\n');
	expect(errors).toEqual([]);
	expect(rows.map((row) => [row.row, row.text("wire")])).toEqual([
		[3, "W\n1"],
		[5, "W2"],
	]);
});

test("columns in any order and letter case, optional ones left out", () => {
	const { rows, errors } = open("Size, WIRE\n1,W1\n");
	expect(errors).toEqual([]);
	expect([rows[0]!.text("wire"), rows[0]!.text("size"), rows[0]!.text("marks")]).toEqual(["W1", "1", ""]);
});

test("unknown, unnamed, repeated and missing columns are all named at once", () => {
	const { lines, rows, usable } = open("wier,marks,marks,\nW1,,,x\n");
	expect(lines).toEqual([
		'w.csv, row 1, column wier: there is no column "wier" in this table. Wanted: wire, perhaps; one of wire, size, marks',
		'w.csv, row 1, column marks: the column "marks" stands in the header twice. Wanted: each column once; two values in one cell are separated by ;',
		"w.csv, row 1: column 4 holds text but has no name. Wanted: a name in the header",
		'w.csv, row 1, column wire: the column "wire" is missing. Wanted: a column named wire; required are wire, size',
		'w.csv, row 1, column size: the column "size" is missing. Wanted: a column named size; required are wire, size',
	]);
	expect({ rows, usable }).toEqual({ rows: [], usable: false });
});

test("a row with too few or too many cells is one error, and comes as a faulty row", () => {
	const { lines, rows, errors } = open("wire,size,marks\nW1,1\nW2,2,a,b\nW3,3,\n");
	expect(lines).toEqual([
		"w.csv, row 2: the row has 2 cells, the header 3. Wanted: 3 cells",
		"w.csv, row 3: the row has 4 cells, the header 3. Wanted: 3 cells; a cell with a comma in it stands in quote marks",
	]);
	expect(rows.map((row) => row.faulty)).toEqual([true, true, false]);
	rows[0]!.refuse("size", "its cells may have slipped", "nothing more said");
	expect(errors).toHaveLength(2);
	expect(open("wire,size\n,\nW1,\n").lines).toEqual([
		"w.csv, row 3, column size: the cell is empty. Wanted: a size",
	]);
});

test("cells are read by type; all that is wrong in a row is kept", () => {
	const { rows, errors } = open("wire,size,marks\nW1,x,wet; red\nW2,2,wet\n");
	const [first, second] = rows;
	expect(first!.read("size", parseNumber)).toBeUndefined();
	first!.list("marks", ["wet", "dry"]);
	expect(first!.choice("wire", ["W1", "W2"], "W2")).toBe("W1");
	expect(errors.map(({ row, column }) => [row, column])).toEqual([
		[2, "size"],
		[2, "marks"],
	]);
	expect(first!.faulty).toBe(true);
	expect(second!.read("size", parseNumber)).toBe(2);
	expect(second!.list("marks", ["wet", "dry"])).toEqual(["wet"]);
	expect(second!.choice("marks", ["dry"], "dry")).toBe("dry");
	expect(errors.at(-1)!.wanted).toContain('"dry"');
});

test("any text opens, and every error says where and what would be right", () => {
	const line = fc.array(fc.constantFrom("wire", "size", "marks", "", "x", '"', "1"), { maxLength: 5 });
	const text = fc.oneof(
		fc.string({ unit: "binary" }),
		fc.array(line).map((lines) => lines.map((cells) => cells.join(",")).join("\n")),
	);
	fc.assert(
		fc.property(text, (whole) => {
			const { rows, errors } = open(whole);
			const located = errors.every(
				(e) => e.file === "w.csv" && e.row > 0 && e.problem !== "" && e.wanted !== "",
			);
			expect(located).toBe(true);
			expect(rows.every((row) => row.faulty || row.text("wire") !== "")).toBe(true);
		}),
		{ seed: 4180, numRuns: 500 },
	);
});

test("the exception holds every error", () => {
	const { errors } = open("wire,size\nW1,\n,2\n");
	const thrown = new TableErrors(errors);
	expect(thrown.errors).toHaveLength(2);
	expect(thrown.message.split("\n")).toHaveLength(2);
});

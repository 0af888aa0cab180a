import fc from "fast-check";
import { expect, test } from "vitest";
import { rowChanges } from "./row-changes.js";
import { writeTable } from "./write-table.js";

const recipe = "step,kind,wire,to\n01,cut,W1,\n02,join,W2,SP1\n03,extend,W3,G1\n";

test("a cell, a row that came, a row that went", () => {
	expect(rowChanges(recipe, recipe.replace("SP1", "SP2"))).toEqual([
		{ kind: "changed", key: "02", row: 3, cells: [{ column: "to", was: "SP1", is: "SP2" }] },
	]);
	expect(rowChanges(recipe, recipe.replace("02,join,W2,SP1\n", ""))).toMatchObject([
		{ kind: "gone", key: "02", row: 3 },
	]);
	expect(rowChanges(recipe, `${recipe}04,stow,W9,\n`)).toEqual([
		{
			...{ kind: "added", key: "04", row: 5 },
			cells: [
				{ column: "step", was: "", is: "04" },
				{ column: "kind", was: "", is: "stow" },
				{ column: "wire", was: "", is: "W9" },
			],
		},
	]);
});

test("steps numbered anew are the same steps with other numbers", () => {
	const longer = "step,kind,wire,to\n01,cut,W1,\n02,stow,W9,\n03,join,W2,SP1\n04,extend,W3,G1\n";
	const changes = rowChanges(recipe, longer);
	expect(changes.map(({ kind, key, cells }) => [kind, key, cells.length])).toEqual([
		["added", "02", 3],
		["changed", "03", 1],
		["changed", "04", 1],
	]);
	expect(changes[1]?.cells).toEqual([{ column: "step", was: "02", is: "03" }]);
});

test("another step under the same number is one that goes and one that comes", () => {
	const other = "step,kind,wire,to\n01,cut,W1,\n02,stow,W7,\n03,extend,W3,G1\n";
	expect(rowChanges(recipe, other).map(({ kind, key }) => [kind, key])).toEqual([
		["added", "02"],
		["gone", "02"],
	]);
});

test("how a cell is quoted, and in which order columns and rows stand, is no difference", () => {
	expect(rowChanges(recipe, 'wire,"step",kind,to\r\n')).toHaveLength(3);
	const turned = 'step;to;kind;wire;note\n03;G1;extend;"W3";\n\n01;;cut;W1;\n02; SP1 ;join;W2;\n';
	expect(rowChanges(recipe, turned)).toEqual([]);
});

test("no table before or after", () => {
	expect(rowChanges(undefined, recipe).map(({ kind }) => kind)).toEqual(["added", "added", "added"]);
	expect(rowChanges(recipe, undefined).map(({ kind }) => kind)).toEqual(["gone", "gone", "gone"]);
	expect(rowChanges(undefined, undefined)).toEqual([]);
});

const cell = fc.constantFrom("", "a", "b", "x,y", 'q"');
const rows = fc.array(fc.tuple(fc.constantFrom("1", "2", "3"), cell, cell), { maxLength: 8 });
const text = (table: readonly (readonly string[])[]) =>
	writeTable({ columns: ["key", "one", "two"], rows: table });

test("the counts add up, and what changed differs", () => {
	fc.assert(
		fc.property(rows, rows, (before, after) => {
			const changes = rowChanges(text(before), text(after));
			const count = (wanted: string) => changes.filter(({ kind }) => kind === wanted).length;
			expect(before.length + count("added") - count("gone")).toBe(after.length);
			for (const { cells } of changes) for (const { was, is } of cells) expect(was).not.toBe(is);
			expect(rowChanges(text(before), text([...before].reverse()))).toEqual([]);
		}),
		{ seed: 11, numRuns: 300 },
	);
});

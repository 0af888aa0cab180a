import fc from "fast-check";
import { expect, test } from "vitest";
import { formatTableError, readTable } from "../tables/index.js";
import { exampleTables } from "./example.test-helper.js";
import { someTables } from "./random-loom.test-helper.js";
import { readTables } from "./read-tables.js";
import { writeTables } from "./write-tables.js";

test("the worked example, written and read, is the same loom", () => {
	const { delivered } = readTables(exampleTables(), "example");
	const again = readTables(writeTables(delivered), "example");
	expect(again.errors).toEqual([]);
	expect(again.delivered).toEqual(delivered);
	expect([...again.delivered.wires.keys()]).toEqual([...delivered.wires.keys()]);
});

test("tables are written only where there is something to write, and the required ones always", () => {
	const { delivered } = readTables(exampleTables());
	const bare = { ...delivered, wires: new Map(), conditions: new Map(), joints: new Map() };
	expect(Object.keys(writeTables(bare)).toSorted()).toEqual(["contacts.csv", "parts.csv", "wires.csv"]);
	expect(readTable("wires.csv", writeTables(bare)["wires.csv"]!, []).rows).toEqual([]);
});

test("a condition that sets nothing cannot be written", () => {
	const { delivered } = readTables(exampleTables());
	const empty = { id: "x", title: "", like: "", settings: new Map() };
	expect(() => writeTables({ ...delivered, conditions: new Map([["x", empty]]) })).toThrow(RangeError);
});

test("any loom, recipe and new parts, written and read, are the same", () => {
	fc.assert(
		fc.property(someTables(), ({ loom, recipe, newParts }) => {
			const again = readTables(writeTables(loom, recipe, newParts), loom.name);
			expect(again.errors.map(formatTableError)).toEqual([]);
			expect(again.delivered).toEqual(loom);
			expect(again.recipe).toEqual(recipe);
			expect(again.newParts).toEqual(newParts);
			expect([...again.delivered.parts.keys()]).toEqual([...loom.parts.keys()]);
		}),
		{ seed: 60757, numRuns: 200 },
	);
});

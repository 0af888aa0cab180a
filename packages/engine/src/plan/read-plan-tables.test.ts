import { readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { readSoundTables } from "../loom/index.js";
import { TableErrors } from "../tables/index.js";
import { demoFiles } from "../test-support/demo.test-helper.js";
import { DEFAULT_COSTS } from "./costs.js";
import { readPlanTables } from "./read-plan-tables.js";

const page = readFileSync(new URL("../../../../docs/plan.md", import.meta.url), "utf8");
const block = (title: string): string => {
	const start = page.indexOf(`\`\`\`${title}\n`) + title.length + 4;
	return page.slice(start, page.indexOf("```", start));
};
const car = readSoundTables(demoFiles("small"));

test("the example of docs/plan.md reads", () => {
	const plan = readPlanTables(
		{ "targets.csv": block("csv targets.csv"), "places.csv": block("csv places.csv") },
		car,
	);
	expect(plan.parts.map(({ want, part }) => [want, part])).toEqual([
		["remove", "K1"],
		["fit", "S-WRK"],
	]);
	expect(plan.circuits).toMatchObject([
		{ from: "S-WRK.1", to: { at: "permanent feed" }, mm2: 1.5, mostJoints: undefined },
		{ from: "S-WRK.2", to: { at: "function", name: "work-lamps" }, mm2: 1.5, mostJoints: 1 },
	]);
	expect(plan.places).toEqual([
		{ place: "seat frame", zone: "cabin", near: "under the seat", metres: 0.3, celsius: undefined },
	]);
});

/** What reading says is wrong; empty where it reads. */
function errorsOf(files: Readonly<Record<string, string>>): string {
	try {
		readPlanTables(files, car);
		return "";
	} catch (error) {
		if (error instanceof TableErrors) return error.message;
		throw error;
	}
}

test("the mistakes of docs/plan.md are told all at once, as written there", () => {
	const text = block("csv targets.csv with mistakes");
	const after = page.slice(page.indexOf(text) + text.length);
	const start = after.indexOf("```text\n") + 8;
	expect(`${errorsOf({ "targets.csv": text })}\n`).toBe(after.slice(start, after.indexOf("```", start)));
});

const TARGET = "target,want,from,to,size,class,pair,part\n";

test.each([
	["no table", {}, "targets.csv: the table is missing"],
	[
		"a restraint circuit",
		{ "targets.csv": `${TARGET}a,,CU.1,CU.2,1,restraint,,` },
		"column class: restraint circuits are not planned",
	],
	[
		"half a pair",
		{ "targets.csv": `${TARGET}a,,CU.1,CU.2,1,bus pair,P,` },
		'column pair: 1 rows name the pair "P"',
	],
	[
		"a pair without a name",
		{ "targets.csv": `${TARGET}a,,CU.1,CU.2,1,bus pair,,` },
		"column pair: the cell is empty",
	],
	["one contact twice", { "targets.csv": `${TARGET}a,,CU.1,CU.1,1,,,` }, "column to: both ends are at CU.1"],
	[
		"a part that may be fitted",
		{ "targets.csv": `${TARGET}a,may fit,,,,,,S-WRK` },
		"column want: S-WRK is a part",
	],
	[
		"a circuit's cell in a part's row",
		{ "targets.csv": `${TARGET}a,remove,CU.1,,,,,K1` },
		"column from: a row that says remove has none",
	],
])("%s", (_, files, wanted) => {
	expect(errorsOf(files as Record<string, string>)).toContain(wanted);
});

test.each([
	["item\nsplise", 'column item: "splise" is no cost item. Wanted: splice, perhaps'],
	["item,minutes\nsplice,-1", 'column minutes: "-1" is below zero'],
	["item\nsplice\nsplice", 'column item: "splice" has a row already'],
	["item,zone\npassage,cabin", 'column zone: "cabin" is not two zones'],
])("costs.csv: %s", (costs, wanted) => {
	expect(errorsOf({ "targets.csv": TARGET, "costs.csv": costs })).toContain(wanted);
});

test("a cost row changes what it says and nothing else", () => {
	const { costs } = readPlanTables(
		{ "targets.csv": TARGET, "costs.csv": "item,zone,minutes\nsplice,,9\npassage,b/a,7" },
		car,
	);
	expect(costs.get("splice")).toMatchObject({ minutes: 9, price: DEFAULT_COSTS.get("splice")!.price });
	expect(costs.get("passage a/b")).toMatchObject({ minutes: 7, price: DEFAULT_COSTS.get("passage")!.price });
});

test("every default says where it comes from", () => {
	for (const { note } of DEFAULT_COSTS.values()) expect(note).toMatch(/common practice, no source$/);
});

test("whatever text comes, it reads or says what is wrong", () => {
	const word = fc.oneof(
		fc.constantFrom(
			"a",
			"fit",
			"remove",
			"K1",
			"S-WRK",
			"S-WRK.1",
			"CU.1",
			"ground",
			"function",
			"1.5",
			"-2",
			"wire",
			"passage",
			"x/y",
			'"',
			";",
		),
		fc.string({ maxLength: 6 }),
	);
	const table = (head: string) =>
		fc
			.array(fc.array(word, { maxLength: 9 }), { maxLength: 4 })
			.map((rows) => [head, ...rows.map((row) => row.join(","))].join("\n"));
	fc.assert(
		fc.property(
			table("target,want,part,from,to,size,joints,pair,class"),
			table("item,zone,minutes,price,value"),
			table("place,zone,near,metres,celsius"),
			(targets, costs, places) => {
				errorsOf({ "targets.csv": targets, "costs.csv": costs, "places.csv": places });
			},
		),
		{ seed: 7, numRuns: 300 },
	);
});

import fc from "fast-check";
import { expect, test } from "vitest";
import { formatTableError, TableErrors } from "../tables/index.js";
import { exampleTables } from "./example.test-helper.js";
import { readSoundTables, readTables } from "./read-tables.js";

/** The worked example with rows added to its tables, and tables added to it. */
function withRows(added: Readonly<Record<string, string>>): Record<string, string> {
	const files = exampleTables();
	for (const [file, text] of Object.entries(added)) files[file] = (files[file] ?? "") + text;
	return files;
}

function errorsOf(files: Readonly<Record<string, string>>): readonly string[] {
	return readTables(files).errors.map((e) => `${e.file} ${e.row} ${e.column}: ${e.problem} -> ${e.wanted}`);
}

const NEW = {
	"new-parts.csv": "part,kind\nECU2,control unit\n",
	"new-contacts.csv": "contact,part,connector,cavity,role\nECU2.1,ECU2,X1,1,supply\n",
	"new-joints.csv": "joint,kind\nSP9,splice\n",
};

test("new parts, contacts and joints may be named by conditions, monitors and functions", () => {
	const files = withRows({
		...NEW,
		"conditions.csv": "new,,ECU2.1,on\n",
		"monitors.csv": "code,unit,contact,when,below,of\nU1,ECU2,ECU2.1!pin,new,9,converted\n",
		"functions.csv": "function,when,contact,reference,low\nfed,new,ECU2.1,BAT.-,9\n",
	});
	const tables = readTables(files);
	expect(tables.errors.map(formatTableError)).toEqual([]);
	expect([...tables.newParts.parts.keys()]).toEqual(["ECU2"]);
	expect([...tables.newParts.contacts.keys()]).toEqual(["ECU2.1"]);
	expect([...tables.newParts.joints.keys()]).toEqual(["SP9"]);
	expect(tables.delivered.parts.has("ECU2")).toBe(false);
	expect(tables.delivered.monitors).toMatchObject([
		{ code: "U1", measures: "volts", ratio: 1, below: 9, above: undefined, of: "converted" },
	]);
	expect(tables.delivered.functions).toMatchObject([{ function: "fed", low: 9, high: undefined, of: "" }]);
	expect(tables.locate("part", "ECU2")).toEqual({ file: "new-parts.csv", row: 2 });
	expect(tables.locate("monitor", 0)).toEqual({ file: "monitors.csv", row: 2 });
	expect(tables.locate("function", 0)).toEqual({ file: "functions.csv", row: 2 });
	expect(tables.locate("setting", "ECU2.1", "new")).toEqual({ file: "conditions.csv", row: 6 });
	expect(tables.locate("setting", "like", "lit")).toEqual({ file: "conditions.csv", row: 4 });
	expect(tables.locate("wire", "W99")).toBeUndefined();
});

test("recipe rows come typed", () => {
	const recipe =
		"step,kind,title,wire,at,new,size,colour,length,minutes\n" +
		'10,cut,"Cut, to extend",W4,40 cm,W4/b,,,,5\n' +
		"20,cut,,W5,from,,18 AWG,sw/ws,1 ft,\n";
	const { recipe: steps, errors } = readTables(withRows({ "recipe.csv": recipe }));
	expect(errors).toEqual([]);
	expect(steps[0]).toMatchObject({
		step: "10",
		kind: "cut",
		title: "Cut, to extend",
		at: { metres: 0.4 },
		fresh: "W4/b",
	});
	expect(steps[0]).toMatchObject({
		minutes: 5,
		mm2: undefined,
		metres: undefined,
		colours: [],
		row: 2,
		joint: "",
	});
	expect(steps[1]).toMatchObject({
		at: "from",
		colours: ["BK", "WH"],
		metres: 0.3048,
		minutes: undefined,
		row: 3,
	});
});

const INLINE = "X2,connector,,,\n";
const WIRE = (from: string, to: string) => `W90,${from},${to},1,RD,1\n`;

test.each<[string, Record<string, string>, string[]]>([
	[
		"part twice",
		{ "parts.csv": "K1,relay,,,\n" },
		['parts.csv 11 part: "K1" is already the name in parts.csv, row 5'],
	],
	[
		"part and joint",
		{ "joints.csv": "K1,splice,\n" },
		['joints.csv 5 joint: "K1" is already the name in parts.csv, row 5'],
	],
	[
		"new part as delivered",
		{ "new-parts.csv": "part,kind\nK1,relay\n" },
		['new-parts.csv 2 part: "K1" is already the name in parts.csv, row 5'],
	],
	[
		"contact twice",
		{ "contacts.csv": "K1.30,K1,,,30\n" },
		['contacts.csv 24 contact: "K1.30" is already the name in contacts.csv, row 10'],
	],
	["bad name", { "parts.csv": "K 1,relay,,,\n" }, ['parts.csv 11 part: "K 1" is not a name']],
	[
		"reserved name",
		{ "parts.csv": "like,relay,,,\n" },
		['parts.csv 11 part: "like" has a meaning of its own'],
	],
	[
		"unknown part",
		{ "contacts.csv": "K2.30,K2,,,30\n" },
		['contacts.csv 24 part: "K2" is not known -> K1, perhaps'],
	],
	[
		"contact not after its part",
		{ "contacts.csv": "K2.30,K1,,,30\n" },
		['contacts.csv 24 contact: "K2.30" is not its part\'s name, a dot and a name -> K1.30'],
	],
	[
		"unknown connector",
		{ "contacts.csv": "K1.99,K1,X9,1,30\n" },
		['contacts.csv 24 connector: "X9" is not known'],
	],
	[
		"no connector",
		{ "contacts.csv": "K1.99,K1,L1,1,30\n" },
		['contacts.csv 24 connector: "L1" is a lamp -> a part of kind connector'],
	],
	[
		"no cavity",
		{ "contacts.csv": "K1.99,K1,X1,,30\n" },
		["contacts.csv 24 cavity: the cell is empty -> the number of the cavity in X1"],
	],
	[
		"cavity twice",
		{ "contacts.csv": "K1.99,K1,X1,3,30\n" },
		["contacts.csv 24 cavity: cavity 3 of X1 already holds ECU.3"],
	],
	[
		"in-line half missing",
		{ "parts.csv": INLINE, "contacts.csv": "X2.1a,X2,,1,a\n" },
		[
			"contacts.csv 24 cavity: cavity 1 of X2 has no contact on the other half -> a contact with the same cavity and role b",
		],
	],
	[
		"in-line half twice",
		{ "parts.csv": INLINE, "contacts.csv": "X2.1a,X2,,1,a\nX2.1b,X2,,1,b\nX2.1c,X2,,1,b\n" },
		["contacts.csv 26 cavity: cavity 1 of X2, half b, already holds X2.1b"],
	],
	[
		"in-line elsewhere",
		{ "parts.csv": INLINE, "contacts.csv": "X2.1a,X2,X1,9,a\nX2.1b,X2,X2,9,b\n" },
		["contacts.csv 24 connector: a contact of the connector X2 is not in another housing"],
	],
	[
		"new contact of a delivered part",
		{ "new-contacts.csv": "contact,part,role\nK1.99,K1,87a\n" },
		[
			'new-contacts.csv 2 part: "K1" is in the car as delivered (parts.csv, row 5) -> a part of new-parts.csv',
		],
	],
	[
		"unknown end",
		{ "wires.csv": WIRE("K1.3O", "G2") },
		[
			'wires.csv 18 from: "K1.3O" is not known -> K1.30, perhaps',
			'wires.csv 18 to: "G2" is not known -> G1, perhaps',
		],
	],
	["wire to a part", { "wires.csv": WIRE("cut", "K1") }, ['wires.csv 18 to: "K1" is not known']],
	[
		"new joint in a delivered wire",
		{ ...NEW, "wires.csv": WIRE("cut", "SP9") },
		['wires.csv 18 to: "SP9" is not known'],
	],
	["both ends at one place", { "wires.csv": WIRE("B1", "B1") }, ["wires.csv 18 to: both ends are at B1"]],
	["no length", { "wires.csv": "W90,B1,G1,1,RD,0 mm\n" }, ['wires.csv 18 length: "0 mm" is no length']],
	[
		"unknown duty",
		{ "parts.csv": "", "new-parts.csv": "part,kind,duty,marks\nS9,switch,cluch switch,wett\n" },
		[
			'new-parts.csv 2 duty: "cluch switch" is not known here -> clutch switch, perhaps',
			'new-parts.csv 2 marks: "wett" is not known here -> wet, perhaps',
		],
	],
	[
		"bad positions",
		{ "parts.csv": "S9,switch,,,off; run:1-2\n" },
		['parts.csv 11 positions: "off" is not a position of a switch'],
	],
	[
		"bad joint",
		{ "joints.csv": "J9,spliced,\n" },
		['joints.csv 5 kind: "spliced" is not known here -> splice, perhaps'],
	],
	[
		"unknown subject",
		{ "conditions.csv": "on,,ECU.9,on\n" },
		['conditions.csv 6 subject: "ECU.9" is not known'],
	],
	[
		"subject twice",
		{ "conditions.csv": "lit,,ECU.3,off\n" },
		['conditions.csv 6 subject: "ECU.3" is already set for lit in conditions.csv, row 5'],
	],
	[
		"unknown like",
		{ "conditions.csv": "dark,,like,offf\n" },
		['conditions.csv 6 state: "offf" is not known -> off, perhaps'],
	],
	[
		"circle",
		{ "conditions.csv": "on,,like,lit\n" },
		["conditions.csv 6 state: on is like lit is like on: a circle"],
	],
	["like itself", { "conditions.csv": "me,,like,me\n" }, ["conditions.csv 6 state: me is like me: a circle"]],
	[
		"other title",
		{ "conditions.csv": "lit,Lit,K1,in\n" },
		['conditions.csv 6 title: "Lit" is not the title in the first row of lit'],
	],
	[
		"monitor",
		{ "monitors.csv": "code,unit,contact,when,measures,ratio\nP1,EC,ECU.9,offf,amps,2\n" },
		[
			'monitors.csv 2 unit: "EC" is not known -> ECU, perhaps',
			'monitors.csv 2 contact: "ECU.9" is not known',
			'monitors.csv 2 when: "offf" is not known -> off, perhaps',
			"monitors.csv 2 reference: a current needs a second contact",
			"monitors.csv 2 ratio: there is no twin to compare with",
			"monitors.csv 2 below: neither below nor above is given",
		],
	],
	[
		"function",
		{ "functions.csv": "function,when,contact,low,high,of\nf,on,ECU.1,9,8,later\n" },
		["functions.csv 2 low: low is 9 and high only 8", 'functions.csv 2 of: "later" is not known here'],
	],
	[
		"recipe",
		{ "recipe.csv": "step,kind,at,minutes,new\n1,cut,half way,-1,W 1\n1,cut,,,\n" },
		[
			'recipe.csv 2 at: "half way" is not a length',
			'recipe.csv 2 new: "W 1" is not a name',
			'recipe.csv 2 minutes: "-1" is below zero',
			'recipe.csv 3 step: "1" is already the name in recipe.csv, row 2',
		],
	],
])("%s", (_, added, expected) => {
	const found = errorsOf(withRows(added));
	expect(found).toHaveLength(expected.length);
	expected.forEach((text, at) => {
		expect(found[at]).toContain(text);
	});
});

test("missing tables are named, without errors that only follow from them", () => {
	const { "contacts.csv": _, ...files } = exampleTables();
	expect(errorsOf(files)).toEqual([
		"contacts.csv 0 : the table is missing -> a file contacts.csv with at least the columns contact, part, role",
	]);
	expect(errorsOf({})).toHaveLength(3);
});

test("files in a folder, of any ending and letter case, and files that are no tables", () => {
	const { "wires.csv": wires, "joints.csv": joints, ...rest } = exampleTables();
	const files = {
		...rest,
		"car/Wires.CSV": wires!,
		"joints.tsv": joints!,
		"people.csv": "x",
		"README.md": "y",
	};
	expect(errorsOf(files)).toEqual([]);
	expect(readTables(files).locate("wire", "W2")).toEqual({ file: "car/Wires.CSV", row: 3 });
	expect(errorsOf({ ...files, "joint.csv": "x", "wires.csv": "x" })).toEqual([
		"joint.csv 0 : the file is no table of a loom -> joints, perhaps; one of the tables of a loom",
		"wires.csv 0 : car/Wires.CSV is the same table -> one file for wires",
	]);
});

test("a faulty row is left out, and its name is still known to others", () => {
	const { delivered, errors } = readTables(
		withRows({ "parts.csv": "M1,motor,,ohms=x,\n", "contacts.csv": "M1.1,M1,,,a\n" }),
	);
	expect(errors).toHaveLength(1);
	expect(delivered.parts.has("M1")).toBe(false);
	expect(delivered.contacts.has("M1.1")).toBe(true);
});

test("reading for use throws all errors at once", () => {
	expect(() => readSoundTables(withRows({ "wires.csv": WIRE("x", "y") }))).toThrow(TableErrors);
	expect(readSoundTables(exampleTables()).errors).toEqual([]);
});

test("no text throws, and every error has its file, row and what would be right", () => {
	const example = exampleTables();
	const files = Object.keys({
		...example,
		...NEW,
		"monitors.csv": "",
		"functions.csv": "",
		"recipe.csv": "",
	});
	const words = [
		"K1",
		"K1.30",
		"like",
		"on",
		"lit",
		"cut",
		"part",
		"wire",
		"1",
		"-",
		";",
		":",
		"=",
		'"',
		",",
		"\n",
		"\t",
		"x",
	];
	const scraps = fc.array(fc.oneof(fc.constantFrom(...words), fc.string({ unit: "binary", maxLength: 4 })));
	const edit = fc.record({ file: fc.constantFrom(...files), at: fc.nat(900), cut: fc.nat(40), scraps });
	fc.assert(
		fc.property(fc.array(edit, { minLength: 1, maxLength: 4 }), (edits) => {
			const edited: Record<string, string> = { ...example, ...NEW };
			for (const { file, at, cut, scraps: put } of edits) {
				const text = edited[file] ?? "";
				edited[file] = text.slice(0, at) + put.join("") + text.slice(at + cut);
			}
			const { delivered, errors } = readTables(edited);
			const located = errors.every(
				(e) => files.includes(e.file) && e.row > 0 && e.problem !== "" && e.wanted !== "",
			);
			expect(located).toBe(true);
			expect([...delivered.wires.values()].every(({ mm2, metres }) => mm2 > 0 && metres > 0)).toBe(true);
		}),
		{ seed: 72552, numRuns: 400 },
	);
});

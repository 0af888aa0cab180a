/** Every fault that only the device kinds can know: where it stands and what would be right. */
import { describe, expect, it } from "vitest";
import { exampleTables } from "../loom/example.test-helper.js";
import { readTables } from "../loom/index.js";
import { formatTableError } from "../tables/index.js";
import { checkDevices } from "./check.js";
import { deviceKinds } from "./index.js";

type Tables = Record<string, string>;

/** Faults of the worked example of docs/tables.md with some of its text changed. */
function faults(change: (tables: Tables) => void): string[] {
	const tables = exampleTables();
	change(tables);
	const read = readTables(tables);
	expect(read.errors.map(formatTableError)).toEqual([]);
	return checkDevices(read).map(formatTableError);
}

const swap = (file: string, from: string, to: string) => (tables: Tables) => {
	expect(tables[file]).toContain(from);
	tables[file] = tables[file]!.replace(from, to);
};
const add = (file: string, line: string) => (tables: Tables) => {
	tables[file] = `${tables[file]}${line}\n`;
};

it("the worked example has none", () => {
	expect(faults(() => {})).toEqual([]);
});

describe("parts.csv", () => {
	it("a kind that is none", () => {
		const [only, ...more] = faults(swap("parts.csv", "R1,resistor", "R1,resister"));
		expect(more).toEqual([]);
		expect(only).toBe(
			`parts.csv, row 7, column kind: 'resister' is not a kind of device. Wanted: one of: ${[...deviceKinds.keys()].join(", ")}`,
		);
	});

	it("a setting that the kind does not have", () => {
		expect(faults(swap("parts.csv", "coil_ohms=85", "coilohms=85"))).toEqual([
			"parts.csv, row 5, column values: 'coilohms' is not a setting of it. Wanted: one of: coil_ohms, pull_in_volts, drop_out_volts, contact_ohms",
		]);
	});

	it("a setting that its kind does not have", () => {
		expect(faults(swap("parts.csv", "Plug of the control unit,", "Plug of the control unit,ohms=1"))).toEqual(
			[
				"parts.csv, row 10, column values: 'ohms' is not a setting of it. Wanted: one of: least_mm2, most_mm2",
			],
		);
	});

	it.each([
		["watts=21", "watts=5000", "watts=5000 is out of range. Wanted: 0.05 to 1000 W", 6],
		["volts=12.6", "volts=-12", "volts=-12 is out of range. Wanted: 0 to 60 V", 2],
		["amps=10", "amps=0", "amps=0 is out of range. Wanted: 0.05 to 1000 A", 3],
	])("a setting out of range: %s as %s", (from, to, text, row) => {
		expect(faults(swap("parts.csv", from, to))).toEqual([`parts.csv, row ${row}, column values: ${text}`]);
	});

	it("a setting that the kind cannot do without", () => {
		expect(faults(swap("parts.csv", "amps=10", ""))).toEqual([
			"parts.csv, row 3, column values: a fuse needs 'amps'. Wanted: for example amps=1",
		]);
	});

	it("a switch without positions", () => {
		expect(
			faults((tables) => {
				swap("parts.csv", "off:; run:30-15", "")(tables);
				swap("conditions.csv", "S1,run", "K1,in")(tables);
			}),
		).toEqual([
			"parts.csv, row 4, column positions: a switch needs its positions. Wanted: for example off:; on:1-2",
		]);
	});

	it("a position that joins a terminal the switch has not", () => {
		expect(faults(swap("parts.csv", "off:; run:30-15", '"off:; run:30-15,30-50"'))).toEqual([
			"parts.csv, row 4, column positions: no contact of S1 has the role '50'. Wanted: one of: 30, 15",
		]);
	});

	it("a terminal that the kind cannot do without", () => {
		const without = (tables: Tables) => {
			swap("contacts.csv", "L1.2,L1,,,b\n", "")(tables);
			swap("wires.csv", "W8,L1.2,G1,16 AWG,blk,18 in\n", "")(tables);
		};
		expect(faults(without)).toEqual([
			"parts.csv, row 6, column kind: a lamp needs a contact 'b'. Wanted: a row in contacts.csv with part L1 and role b",
		]);
	});
});

describe("contacts.csv", () => {
	it("a role that the kind does not have", () => {
		expect(faults(add("contacts.csv", "L1.3,L1,,,c"))).toEqual([
			"contacts.csv, row 24, column role: a lamp has no 'c'. Wanted: one of: a, b",
		]);
	});

	it("a role that is there already", () => {
		expect(faults(add("contacts.csv", "L1.3,L1,,,b"))).toEqual([
			"contacts.csv, row 24, column role: L1 has 'b' already: L1.2. Wanted: each role once",
		]);
	});

	it("several pins of one role are right for a control unit", () => {
		expect(faults(add("contacts.csv", "ECU.7,ECU,X1,7,low-side"))).toEqual([]);
	});

	const withValues = (role: string, values: string) => (tables: Tables) => {
		tables["contacts.csv"] = tables["contacts.csv"]!.trim()
			.split("\n")
			.map((line, k) => (k === 0 ? `${line},values` : `${line},`))
			.concat(`ECU.7,ECU,X1,7,${role},${values}`, "")
			.join("\n");
	};

	it("a pin's setting that its role does not have", () => {
		expect(faults(withValues("input pull-up", "ohms=5"))).toEqual([
			"contacts.csv, row 24, column values: 'ohms' is not a setting of it. Wanted: one of: pullup_ohms, volts",
		]);
	});

	it("a pin's setting out of range", () => {
		expect(faults(withValues("input pull-up", "volts=500"))).toEqual([
			"contacts.csv, row 24, column values: volts=500 is out of range. Wanted: 0 to 60 V",
		]);
	});

	it("a pin's setting that is right", () => {
		expect(faults(withValues("input pull-up", "pullup_ohms=4700; volts=3.3"))).toEqual([]);
	});
});

describe("conditions.csv", () => {
	it.each([
		["BAT,off", "BAT,dead", "'dead' is no state of BAT. Wanted: one of: on, off", 2],
		["S1,run", "S1,start", "'start' is no state of S1. Wanted: one of: off, run", 3],
		["ECU.3,on", "ECU.3,high", "'high' is no state of ECU.3. Wanted: one of: off, on", 5],
		["ECU.3,on", "ECU.6,on", "'on' is no state of ECU.6. Wanted: one of: as it is", 5],
		["ECU.3,on", "K1.86,on", "'on' is no state of K1.86. Wanted: one of: as it is", 5],
		["S1,run", "X1,open", "'open' is no state of X1. Wanted: one of: mated, unmated", 3],
	])("%s as %s", (from, to, text, row) => {
		expect(faults(swap("conditions.csv", from, to))).toEqual([
			`conditions.csv, row ${row}, column state: ${text}`,
		]);
	});

	describe("a part set by a number", () => {
		const sensor = (state: string) => (tables: Tables) => {
			swap("parts.csv", "R1,resistor,,ohms=1000", "R1,thermistor,,")(tables);
			swap("conditions.csv", "S1,run", `R1,${state}`)(tables);
		};
		it.each(["-50", "25", "20.5", "250"])("%s is right", (state) => {
			expect(faults(sensor(state))).toEqual([]);
		});
		it.each(["251", "-51", "warm", "NaN", "Infinity"])("%s is not", (state) => {
			expect(faults(sensor(state))).toEqual([
				`conditions.csv, row 3, column state: '${state}' is no state of R1. Wanted: a number from -50 to 250 (degrees C)`,
			]);
		});
	});
});

it("new parts are checked in their own tables", () => {
	const found = faults((tables) => {
		tables["new-parts.csv"] = "part,kind,values\nF2,fuse,\nZ1,zener,\n";
		tables["new-contacts.csv"] = "contact,part,role\nF2.1,F2,in\nF2.2,F2,exit\n";
	});
	expect(found.map((line) => line.split(": ")[0])).toEqual([
		"new-parts.csv, row 2, column values",
		"new-parts.csv, row 2, column kind",
		"new-parts.csv, row 3, column kind",
		"new-contacts.csv, row 3, column role",
	]);
});

it("all at once, in the order of the tables and rows", () => {
	const found = faults((tables) => {
		swap("parts.csv", "amps=10", "")(tables);
		swap("parts.csv", "watts=21", "watts=0")(tables);
		add("contacts.csv", "K1.9,K1,,,88")(tables);
		swap("conditions.csv", "BAT,off", "BAT,out")(tables);
	});
	expect(found.map((line) => line.split(": ")[0])).toEqual([
		"parts.csv, row 3, column values",
		"parts.csv, row 6, column values",
		"contacts.csv, row 24, column role",
		"conditions.csv, row 2, column state",
	]);
});

describe("the kinds themselves", () => {
	it.each([...deviceKinds.values()])(
		"$kind: its defaults lie within its own limits, and each says where it is from",
		(kind) => {
			const rules = [kind.values, ...Object.values(kind.pinValues ?? {})].flatMap((values) =>
				Object.entries(values),
			);
			for (const [name, rule] of rules) {
				expect(rule.min, name).toBeLessThan(rule.max);
				// A fuse's ohms of 0 mean: from its rating.
				if (rule.default !== undefined && !(kind.kind === "fuse" && name === "ohms")) {
					expect(rule.default, name).toBeGreaterThanOrEqual(rule.min);
					expect(rule.default, name).toBeLessThanOrEqual(rule.max);
				}
				expect(rule.source.length, name).toBeGreaterThan(0);
			}
			if (kind.roles !== "any") for (const need of kind.needs) expect(kind.roles).toContain(need);
		},
	);
});

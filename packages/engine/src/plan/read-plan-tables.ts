/** targets.csv, costs.csv and places.csv (docs/plan.md): read whole, every error at once, nothing half taken. */
import { type LoomTables, parseName } from "../loom/index.js";
import { didYouMean, openTable, type Row, readTable, type TableError, TableErrors } from "../tables/index.js";
import { bad, good, type Parsed, parseColours, parseLength, parseNumber, parseSize } from "../units/index.js";
import { DEFAULT_COSTS, wallName } from "./costs.js";
import {
	CLASSES,
	type CostRow,
	type Destination,
	type PlaceRow,
	type PlanTables,
	RAILS,
	type WantedCircuit,
	type WantedPart,
	type WantedParting,
} from "./types.js";

const TARGETS = {
	target: "required",
	want: "optional",
	title: "optional",
	part: "optional",
	from: "optional",
	to: "optional",
	size: "optional",
	class: "optional",
	joints: "optional",
	pair: "optional",
	colour: "optional",
	minutes: "optional",
	note: "optional",
} as const;
const COSTS = {
	item: "required",
	zone: "optional",
	minutes: "optional",
	price: "optional",
	value: "optional",
	note: "optional",
} as const;
const PLACES = {
	place: "required",
	zone: "optional",
	near: "optional",
	metres: "optional",
	celsius: "optional",
	note: "optional",
} as const;

const WANTS = ["connect", "separate", "remove", "fit", "may fit"] as const;
type TargetRow = Row<keyof typeof TARGETS>;

/**
 * The plan's tables out of a car's folder. `targets.csv` must be there; the others may be left out.
 * @param files text by file name, as for `readTables`
 * @throws TableErrors with every error of the three tables
 */
export function readPlanTables(files: Readonly<Record<string, string>>, car: LoomTables): PlanTables {
	const errors: TableError[] = [];
	const rows = <Column extends string>(
		name: string,
		schema: Readonly<Record<Column, "required" | "optional">>,
	) => {
		const file = Object.keys(files).find(
			(given) => /([^/\\]*)\.(csv|tsv|tab|txt)$/i.exec(given)?.[1]?.toLowerCase() === name,
		);
		if (file === undefined) return undefined;
		return openTable(readTable(file, files[file]!, errors), schema, errors).rows;
	};
	const targets = rows("targets", TARGETS);
	if (targets === undefined)
		errors.push({
			file: "targets.csv",
			row: 0,
			column: "",
			problem: "the table is missing",
			wanted: "a file targets.csv with a row for each circuit wanted (docs/plan.md)",
		});
	const plan = {
		...readTargets(targets ?? [], car),
		costs: readCosts(rows("costs", COSTS) ?? []),
		places: readPlaces(rows("places", PLACES) ?? []),
	};
	if (errors.length > 0) throw new TableErrors(errors);
	return plan;
}

function readTargets(
	rows: readonly TargetRow[],
	car: LoomTables,
): Pick<PlanTables, "circuits" | "parts" | "partings"> {
	const circuits: WantedCircuit[] = [];
	const parts: WantedPart[] = [];
	const partings: WantedParting[] = [];
	const names = new Map<string, number>();
	for (const row of rows) {
		const target = row.read("target", parseName) ?? "";
		const first = names.get(target);
		if (first !== undefined && target !== "")
			row.refuse("target", `"${target}" is already the name in row ${first}`, "a name of its own");
		names.set(target, first ?? row.row);
		const want = row.choice("want", WANTS, "connect");
		if (want === "connect") {
			const circuit = readCircuit(row, target, car);
			if (circuit) circuits.push(circuit);
		} else if (want === "separate") {
			const parting = readParting(row, target, car);
			if (parting) partings.push(parting);
		} else {
			const part = readPart(row, target, want, car);
			if (part) parts.push(part);
		}
	}
	checkPairs(circuits, rows);
	return { circuits, parts, partings };
}

function readCircuit(row: TargetRow, target: string, car: LoomTables): WantedCircuit | undefined {
	for (const column of ["from", "to", "size"] as const)
		if (row.text(column) === "") row.refuse(column, "the cell is empty", wantedOf[column]);
	for (const column of ["part", "minutes"] as const)
		if (row.text(column) !== "")
			row.refuse(column, "a wanted circuit has none", "an empty cell, or `fit` or `remove` under want");
	const from = row.text("from");
	if (from !== "" && !contactKnown(car, from))
		row.refuse("from", `"${from}" is not known`, didYouMean(from, contactNames(car), wantedOf.from));
	const to = readDestination(row, car);
	const mm2 = row.read("size", parseSize);
	const kind = row.choice("class", CLASSES, "signal");
	if (kind === "restraint")
		row.refuse(
			"class",
			"restraint circuits are not planned",
			"no such row: the maker's procedure alone holds for them",
		);
	const pair = row.text("pair");
	if (kind === "bus pair" && pair === "")
		row.refuse("pair", "the cell is empty", "the pair's name, the same in two rows");
	const mostJoints = row.read("joints", parseCount);
	const colours = row.read("colour", parseColours) ?? [];
	if (row.faulty || to === undefined || mm2 === undefined) return undefined;
	if (to.name === from) return void row.refuse("to", `both ends are at ${from}`, "another contact or joint");
	const { title } = { title: row.text("title") };
	return {
		target,
		title,
		from,
		to: to.destination,
		mm2,
		class: kind,
		mostJoints,
		pair,
		colours,
		row: row.row,
	};
}

const wantedOf = {
	from: "a contact of the car or of new-contacts.csv",
	to: `a contact, a joint, ${RAILS.map((rail) => `\`${rail}\``).join(", ")}, or \`function NAME\``,
	size: "the least cross-section, e.g. 0.5",
} as const;

function readParting(row: TargetRow, target: string, car: LoomTables): WantedParting | undefined {
	for (const column of ["part", "size", "pair", "class", "joints", "colour", "minutes"] as const)
		if (row.text(column) !== "")
			row.refuse(column, "a row that says separate has none", "an empty cell, or `connect` under want");
	const { contacts, joints } = car.delivered;
	const [from, to] = [row.text("from"), row.text("to")];
	const wanted = "a contact or joint of the car as delivered";
	for (const [column, name] of [
		["from", from],
		["to", to],
	] as const) {
		if (name === "") row.refuse(column, "the cell is empty", wanted);
		else if (!contacts.has(name) && !joints.has(name))
			row.refuse(
				column,
				`"${name}" is not known`,
				didYouMean(name, [...contacts.keys(), ...joints.keys()], wanted),
			);
	}
	if (from !== "" && from === to) row.refuse("to", `both are ${from}`, "another contact or joint");
	return row.faulty ? undefined : { target, title: row.text("title"), from, to, row: row.row };
}

function readDestination(
	row: TargetRow,
	{ delivered, newParts }: LoomTables,
): { destination: Destination; name: string } | undefined {
	const text = row.text("to");
	if (text === "") return undefined;
	const rail = RAILS.find((known) => known === text);
	if (rail !== undefined) return { destination: { at: rail }, name: "" };
	const wanted = /^function (.+)$/.exec(text)?.[1]?.trim();
	if (wanted !== undefined) {
		const known = delivered.functions.map((need) => need.function);
		if (known.includes(wanted)) return { destination: { at: "function", name: wanted }, name: "" };
		row.refuse(
			"to",
			`there is no function "${wanted}"`,
			didYouMean(wanted, known, "a function of functions.csv"),
		);
		return undefined;
	}
	if (delivered.contacts.has(text) || newParts.contacts.has(text))
		return { destination: { at: "contact", name: text }, name: text };
	if (delivered.joints.has(text) || newParts.joints.has(text))
		return { destination: { at: "joint", name: text }, name: text };
	const names = [...delivered.contacts.keys(), ...newParts.contacts.keys(), ...delivered.joints.keys()];
	row.refuse("to", `"${text}" is not known`, didYouMean(text, names, wantedOf.to));
	return undefined;
}

function readPart(
	row: TargetRow,
	target: string,
	want: WantedPart["want"],
	{ delivered, newParts }: LoomTables,
): WantedPart | undefined {
	for (const column of ["from", "to", "size", "pair", "class", "joints", "colour"] as const)
		if (row.text(column) !== "")
			row.refuse(column, `a row that says ${want} has none`, "an empty cell, or `connect` under want");
	const part = row.text("part");
	const known =
		want === "remove" ? [...delivered.parts.keys()] : [...newParts.parts.keys(), ...newParts.joints.keys()];
	if (part === "") row.refuse("part", "the cell is empty", "the name of the part");
	else if (!known.includes(part)) {
		const wanted =
			want === "remove" ? "a part of parts.csv" : "a part of new-parts.csv or a joint of new-joints.csv";
		row.refuse("part", `"${part}" is not known`, didYouMean(part, known, wanted));
	}
	if (want === "may fit" && part !== "" && newParts.parts.has(part))
		row.refuse(
			"want",
			`${part} is a part`,
			"`fit`: only ground points and splices may be left to the proposal",
		);
	const minutes = row.read("minutes", parseAmount);
	return row.faulty ? undefined : { target, title: row.text("title"), want, part, minutes, row: row.row };
}

/** A twisted pair is two circuits. */
function checkPairs(circuits: readonly WantedCircuit[], rows: readonly TargetRow[]): void {
	const pairs = new Map<string, WantedCircuit[]>();
	for (const one of circuits) if (one.pair !== "") pairs.set(one.pair, [...(pairs.get(one.pair) ?? []), one]);
	for (const [pair, members] of pairs)
		if (members.length !== 2)
			for (const { row } of members)
				rows
					.find((one) => one.row === row)
					?.refuse("pair", `${members.length} rows name the pair "${pair}"`, "two rows with the same name");
}

function readCosts(rows: readonly Row<keyof typeof COSTS>[]): PlanTables["costs"] {
	const costs = new Map<string, CostRow>();
	for (const row of rows) {
		const item = row.text("item");
		const before = DEFAULT_COSTS.get(item);
		if (item !== "" && before === undefined)
			row.refuse(
				"item",
				`"${item}" is no cost item`,
				didYouMean(item, DEFAULT_COSTS.keys(), `one of ${[...DEFAULT_COSTS.keys()].join(", ")}`),
			);
		const zones = row.text("zone");
		const zone =
			item === "passage" && zones.includes("/")
				? wallName(...(zones.split("/", 2) as [string, string]))
				: zones;
		if (item === "passage" && !zones.includes("/"))
			row.refuse(
				"zone",
				`"${zones}" is not two zones`,
				"the zones on both sides of the wall, e.g. cabin/engine bay",
			);
		const key = zone === "" ? item : `${item} ${zone}`;
		if (costs.has(key)) row.refuse("item", `"${key}" has a row already`, "one row for each item and zone");
		const amounts = {
			minutes: row.read("minutes", parseAmount) ?? before?.minutes ?? 0,
			price: row.read("price", parseAmount) ?? before?.price ?? 0,
			value: row.read("value", parseAmount) ?? before?.value ?? 0,
		};
		if (!row.faulty) costs.set(key, { ...amounts, note: row.text("note") });
	}
	return costs;
}

function readPlaces(rows: readonly Row<keyof typeof PLACES>[]): PlaceRow[] {
	return rows.flatMap((row) => {
		const [near, metres] = [row.text("near"), row.read("metres", parseLength)];
		if (near !== "" && row.text("metres") === "")
			row.refuse("metres", "the cell is empty", "how far it is from there, e.g. 0.4 m");
		if (near === "" && metres !== undefined)
			row.refuse("near", "the cell is empty", "the place that the metres are counted from");
		const celsius = row.read("celsius", parseNumber);
		return row.faulty ? [] : [{ place: row.text("place"), zone: row.text("zone"), near, metres, celsius }];
	});
}

function parseCount(text: string): Parsed<number> {
	return /^\d$/.test(text)
		? good(Number(text))
		: bad(`"${text}" is no count of joints`, "0 to 9; empty: the general limit");
}

function parseAmount(text: string): Parsed<number> {
	const number = parseNumber(text);
	return number.ok && number.value < 0 ? bad(`"${text}" is below zero`, "0 or more") : number;
}

const contactNames = ({ delivered, newParts }: LoomTables): string[] => [
	...delivered.contacts.keys(),
	...newParts.contacts.keys(),
];
const contactKnown = ({ delivered, newParts }: LoomTables, id: string): boolean =>
	delivered.contacts.has(id) || newParts.contacts.has(id);

/** Rows of targets.csv. */
import { type LoomTables, parseName } from "../loom/index.js";
import { didYouMean, type Row } from "../tables/index.js";
import { bad, good, type Parsed, parseColours, parseSize } from "../units/index.js";
import { parseAmount } from "./parse-amount.js";
import {
	CLASSES,
	type Destination,
	type PlanTables,
	RAILS,
	type WantedCircuit,
	type WantedPart,
	type WantedParting,
} from "./types.js";

export const TARGETS = {
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

const WANTS = ["connect", "separate", "remove", "fit", "may fit"] as const;
type TargetRow = Row<keyof typeof TARGETS>;

export function readTargets(
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

function parseCount(text: string): Parsed<number> {
	return /^\d$/.test(text)
		? good(Number(text))
		: bad(`"${text}" is no count of joints`, "0 to 9; empty: the general limit");
}

const contactNames = ({ delivered, newParts }: LoomTables): string[] => [
	...delivered.contacts.keys(),
	...newParts.contacts.keys(),
];
const contactKnown = ({ delivered, newParts }: LoomTables, id: string): boolean =>
	delivered.contacts.has(id) || newParts.contacts.has(id);

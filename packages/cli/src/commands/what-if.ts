import type { Supposed } from "@loomwright/engine";
import { BadInput, readFolder, type WhatIfAnswer, whatIfAnswer } from "@loomwright/shop";
import { EXIT } from "../failure.js";
import type { Terminal } from "../terminal.js";
import { paint } from "../text/paint.js";
import { table } from "../text/table.js";
import { indented } from "../text/wrap.js";
import { openFolder, printJson, reportMisfits, whichOf, whichWords } from "./open.js";

interface Options {
	readonly json?: true;
	readonly recipe: "whole" | "none";
	readonly set?: readonly string[];
	readonly without?: string;
}

/** Readings shown as text; JSON has all. */
const MOST_READINGS = 12;

export function whatIf(terminal: Terminal, folder: string, options: Options): number {
	const supposed = supposedOf(options);
	const { car, title } = openFolder(folder);
	const answer = whatIfAnswer(car, readFolder(folder).tables, supposed, whichOf(options.recipe));
	if (options.json) printJson(terminal, answer);
	else terminal.out(text(terminal, title, answer));
	const misfit = reportMisfits(terminal, answer.misfits);
	return answer.findings.come.some(({ severity }) => severity !== "note") ? EXIT.findings : misfit;
}

function supposedOf({ set, without }: Options): Supposed {
	if ((set === undefined) === (without === undefined))
		throw new BadInput(
			"one change is asked about at a time",
			"--set TABLE ROW COLUMN CELL, or --without STEP",
		);
	if (without !== undefined) return { without };
	const [name = "", row = "", column = "", cell = "", ...more] = set ?? [];
	if (set === undefined || set.length < 4 || more.length > 0)
		throw new BadInput(
			`--set has ${set?.length ?? 0} words`,
			"four: the table, what stands in the row's first column, the column, the cell; an empty cell as ''",
		);
	return { table: name.replace(/\.csv$/, ""), row, column, cell };
}

function text(terminal: Terminal, title: string, answer: WhatIfAnswer): string {
	const { findings, readings, of, cost } = answer;
	const section = (heading: string, lines: readonly string[]) =>
		lines.length === 0 ? "" : `\n${paint(terminal, "bold", heading)}\n${lines.join("\n")}\n`;
	const sentence = (line: string) => indented(line, 0, terminal.columns);
	const said = (found: WhatIfAnswer["findings"]["come"]) =>
		found.map(({ severity, rule, where, why }) =>
			sentence(`${severity.toUpperCase()} ${rule}: ${where}. ${why}`),
		);
	const nothing = [
		findings.come,
		findings.gone,
		readings,
		answer.wires,
		answer.fuses,
		answer.loads,
		answer.splices,
	].every((list) => list.length === 0);
	const minutes = cost.after.minutes - cost.before.minutes;
	const rest = readings.length - MOST_READINGS;
	return [
		`${sentence(`${title}, loom ${whichWords(of)}: ${nothing ? "nothing moves" : counted(answer)}`)}\n`,
		minutes === 0
			? ""
			: `${sentence(`The work takes ${Math.abs(minutes)} minutes ${minutes > 0 ? "more" : "less"}.`)}\n`,
		section("Found now", said(findings.come)),
		section("No longer found", said(findings.gone)),
		section(
			"Readings against the battery's minus",
			readings.length === 0 ? [] : [readingTable(readings, terminal.columns)],
		),
		rest > 0 ? `and ${rest} more\n` : "",
		section("Sizes", sizeLines(answer).map(sentence)),
	].join("");
}

const counted = ({ findings, readings }: WhatIfAnswer) =>
	`${findings.come.length} findings come, ${findings.gone.length} go, ${readings.length} readings move`;

const volts = (value: number | null) => (value === null ? "open" : `${value.toFixed(2)} V`);

function readingTable(readings: WhatIfAnswer["readings"], columns: number): string {
	const rows = readings
		.slice(0, MOST_READINGS)
		.map(({ contact, when, before, after, conditions }) => [
			contact,
			when,
			volts(before),
			volts(after),
			String(conditions),
		]);
	const titles = ["at", "when", "before", "after", "conditions"].map((title) => ({ title }));
	return table(titles, rows, columns);
}

/** What no longer does, or does now. */
function sizeLines({ wires, fuses, loads }: WhatIfAnswer): string[] {
	const verdict = (does: boolean | undefined) =>
		does === undefined ? "is not there" : does ? "does" : "does not do";
	const lines: string[] = [];
	for (const { id, before, after } of wires)
		if (before?.suffices !== after?.suffices)
			lines.push(`Wire ${id} ${verdict(before?.suffices)}, then ${verdict(after?.suffices)}.`);
	for (const { id, before, after } of fuses)
		for (const fault of after?.faults ?? [])
			if (!before?.faults.includes(fault)) lines.push(`Fuse ${id} ${fault}.`);
	for (const { id, before, after } of loads)
		if (before?.suffices !== after?.suffices)
			lines.push(
				after ? `${id} ${after.suffices ? "gets" : "no longer gets"} its volts.` : `${id} no longer works.`,
			);
	return lines;
}

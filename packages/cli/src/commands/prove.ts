import {
	KeptFolder,
	keptSheet,
	type ProveAnswer,
	parseSheetEntries,
	proveAnswer,
	readText,
} from "@loomwright/shop";
import { EXIT } from "../failure.js";
import type { Terminal } from "../terminal.js";
import { bandText } from "../text/band.js";
import { paint } from "../text/paint.js";
import { percent } from "../text/quantity.js";
import { table } from "../text/table.js";
import { indented, named } from "../text/wrap.js";
import { findText } from "./find.js";
import { openFolder, printJson, reportMisfits, whichWords } from "./open.js";

interface Options {
	readonly json?: true;
	readonly leastOhms: number;
	/** File of what was read. */
	readonly entries?: string;
}

/** Examples shown of faults that no reading catches, for each reason. */
const SHOWN = 3;
/** Faults shown where a reading is wrong. */
const TOP = 5;

export function prove(terminal: Terminal, folder: string, options: Options): number {
	const { car, title, tables } = openFolder(folder);
	const { json, leastOhms, entries: file } = options;
	const kept = terminal.kept === undefined ? undefined : new KeptFolder(terminal.kept);
	const sheet = keptSheet(car, tables, { leastOhms }, kept);
	const answer = proveAnswer(
		car,
		sheet,
		file === undefined ? [] : parseSheetEntries(sheet, readText(file), file),
	);
	if (json) printJson(terminal, answer);
	else terminal.out(`${(file === undefined ? sheetText : judgedText)(terminal, title, answer)}\n`);
	const misfit = reportMisfits(terminal, answer.misfits);
	return answer.found === null ? misfit : EXIT.findings;
}

function sheetText(terminal: Terminal, title: string, answer: ProveAnswer): string {
	const { columns } = terminal;
	const { of, readings, lowerBound, offered, placeChanges, leastOhms } = answer;
	const size = readings === lowerBound ? "no fewer could do it" : `no fewer than ${lowerBound} could do it`;
	return [
		indented(
			`${title}, loom ${whichWords(of)}: ${readings} readings before power; of the ${offered} offered ${size}. The leads go to another place ${placeChanges} times.`,
			0,
			columns,
		),
		indented(`${coverageText(answer)} Poor connections count from ${leastOhms} ohm on.`, 0, columns),
		...answer.parts.map((part, k) => partText(terminal, part, answer.parts[k - 1]?.cautions ?? [])),
		missedText(terminal, answer.missed),
	].join("\n\n");
}

function coverageText({ coverage: { faults, detectable, caught } }: ProveAnswer): string {
	const share = detectable === 0 ? "" : ` (${percent(caught / detectable)})`;
	return `${faults} single faults considered; some reading before power shows ${detectable} of them, this sheet ${caught}${share}.`;
}

/** @param said cautions of the part before, which are not said again */
function partText(terminal: Terminal, part: ProveAnswer["parts"][number], said: readonly string[]): string {
	const { columns } = terminal;
	const lines = [
		...part.prepare.map((words) => named("do", words, columns, 2, 7)),
		...part.cautions
			.filter((words) => !said.includes(words))
			.map((words) => named("caution", words, columns, 2, 7)),
		...part.rows.flatMap((row) =>
			row.cautions.map((words) => named("caution", `row ${row.number}: ${words}`, columns, 2, 7)),
		),
	];
	const titles = [
		{ title: "row", align: "right" as const },
		{ title: "first lead" },
		{ title: "at" },
		{ title: "second lead" },
		{ title: "at" },
		{ title: "ohms" },
	];
	const rows = part.rows.map((row) => [
		String(row.number),
		row.from,
		row.place,
		row.to,
		row.toPlace === row.place ? "same place" : row.toPlace,
		bandText(row),
	]);
	const heading = paint(terminal, "bold", indented(part.title, 0, columns));
	return `${heading}\n${lines.join("\n")}\n\n${table(titles, rows, columns)}`;
}

function missedText(terminal: Terminal, missed: ProveAnswer["missed"]): string {
	const { columns } = terminal;
	const heading = paint(terminal, "bold", "What it cannot show");
	if (missed.length === 0) return `${heading}\n  nothing: every fault considered is shown`;
	const reasons = new Map<string, ProveAnswer["missed"]>();
	for (const miss of missed) reasons.set(miss.reason, [...(reasons.get(miss.reason) ?? []), miss]);
	const blocks = [...reasons].map(([reason, list]) => {
		const more = list.length - SHOWN;
		return [
			`  ${list.length}  ${reason}`,
			indented(list[0]!.why, 4, columns),
			...list.slice(0, SHOWN).map((miss) => named("-", miss.where, columns, 4)),
			...(more > 0 ? [indented(`and ${more} more; --json names them all`, 6, columns)] : []),
		].join("\n");
	});
	return `${heading}\n${blocks.join("\n")}`;
}

function judgedText(terminal: Terminal, title: string, answer: ProveAnswer): string {
	const { columns } = terminal;
	const { judged, readings, found } = answer;
	// A row that was read once more counts as it was read last.
	const last = [...new Map(judged.map((one) => [one.row, one])).values()];
	const wrong = last.filter(({ passes }) => !passes);
	const rows = new Map(answer.parts.flatMap((part) => part.rows.map((row) => [row.number, row])));
	const head = `${title}: ${last.length} of ${readings} readings taken, ${wrong.length === 0 ? "all right" : `${wrong.length} not right`}.`;
	const blocks = wrong.map(({ row, text }) => {
		const { from, to, place, toPlace } = rows.get(row)!;
		const line = (name: string, words: string) => named(name, words, columns, 2, 7);
		const places = place === toPlace ? place : `${place}; ${toPlace}`;
		return [paint(terminal, "red", `row ${row}`), line("between", `${from} and ${to}`), line("at", places)]
			.concat(line("shows", text))
			.join("\n");
	});
	return [
		indented(head, 0, columns),
		...blocks,
		...(found === null ? [] : [findText(terminal, found, TOP).trimEnd()]),
	].join("\n\n");
}

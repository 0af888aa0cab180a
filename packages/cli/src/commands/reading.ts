import type { What } from "@loomwright/engine";
import { BadInput, type ReadingAnswer, readingAnswer } from "@loomwright/shop";
import type { Terminal } from "../terminal.js";
import { paint } from "../text/paint.js";
import { percent, quantity } from "../text/quantity.js";
import { indented } from "../text/wrap.js";
import { openFolder, printJson, reportMisfits, whichOf, whichWords } from "./open.js";

interface Options {
	readonly json?: true;
	readonly recipe: "whole" | "none";
	readonly what: What;
	readonly when?: string;
}

export function reading(
	terminal: Terminal,
	folder: string,
	from: string,
	to: string,
	options: Options,
): number {
	const { car } = openFolder(folder);
	const which = whichOf(options.recipe);
	const { json, what, when } = options;
	if (when === undefined)
		throw new BadInput(
			"the condition is not named",
			`--when with one of: ${[...car[which].conditions.keys()].join(", ")}`,
		);
	const answer = readingAnswer(car, { what, from, to, when }, which);
	if (json) printJson(terminal, answer);
	else terminal.out(text(terminal, answer));
	return reportMisfits(terminal, answer.misfits);
}

function text(terminal: Terminal, answer: ReadingAnswer): string {
	const { what, from, to, when, of, value, low, high, unit, open, how, grounds } = answer;
	const shown = paint(terminal, "bold", quantity(value, unit));
	const band = open ? "" : `  (95 of 100 sound cars: ${quantity(low, unit)} to ${quantity(high, unit)})`;
	const wide = grounds.map((ground) => `${ground.text} ${percent(ground.share)}`).join(", ");
	const lines = [
		`${what} from ${from} to ${to}, condition ${when}, loom ${whichWords(of)}`,
		how,
		...(wide === "" ? [] : [`What widens the band: ${wide}.`]),
	];
	return `${shown}${band}\n${lines.map((line) => `${indented(line, 0, terminal.columns)}\n`).join("")}`;
}

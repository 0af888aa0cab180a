import { type PowerAnswer, powerAnswer } from "@loomwright/shop";
import type { Terminal } from "../terminal.js";
import { bandText } from "../text/band.js";
import { paint } from "../text/paint.js";
import { indented, named } from "../text/wrap.js";
import { openFolder, printJson, reportMisfits, whichWords } from "./open.js";

type Stage = PowerAnswer["stages"][number];

/** What the meter is set to, by unit. */
const SETTINGS = { V: "volts", A: "amperes", ohm: "ohms" } as const;

export function power(terminal: Terminal, folder: string, { json }: { json?: true }): number {
	const { car, title } = openFolder(folder);
	const answer = powerAnswer(car);
	if (json) printJson(terminal, answer);
	else terminal.out(text(terminal, title, answer));
	return reportMisfits(terminal, answer.misfits);
}

function text(terminal: Terminal, title: string, { of, stages }: PowerAnswer): string {
	const count =
		stages.length === 0
			? "no battery, so there is nothing to power up"
			: `${stages.length} stages. Go on only when everything under 'read' and 'true' holds; the maker's procedure comes first`;
	const head = indented(`${title}, loom ${whichWords(of)}: ${count}.`, 0, terminal.columns);
	return `${head}\n${stages.map((stage) => `\n${stageText(terminal, stage)}\n`).join("")}`;
}

function stageText(terminal: Terminal, stage: Stage): string {
	const line = (name: string) => (words: string) => named(name, words, terminal.columns, 2, 7);
	return [
		paint(terminal, "bold", named(String(stage.number), stage.title, terminal.columns)),
		...stage.cautions.map(line("caution")),
		...stage.connect.map(line("do")),
		...stage.read.map(readText).map(line("read")),
		...stage.mustBeTrue.map(line("true")),
		...(stage.live.length === 0 ? [] : [line("live")(stage.live.join(", "))]),
		...stage.safe.map(line("safe")),
	].join("\n");
}

const readText = (reading: Stage["read"][number]): string =>
	`${bandText(reading)} (${SETTINGS[reading.unit]}) from ${reading.from} to ${reading.to}`;

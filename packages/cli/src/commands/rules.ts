import { type RulesAnswer, rulesAnswer } from "@loomwright/shop";
import { EXIT } from "../failure.js";
import type { Terminal } from "../terminal.js";
import { paint } from "../text/paint.js";
import { indented, named } from "../text/wrap.js";
import { openFolder, printJson, reportMisfits, whichOf, whichWords } from "./open.js";

type Finding = RulesAnswer["findings"][number];

const COLOURS = { stop: "red", warn: "yellow", note: "bold" } as const;

export function rules(
	terminal: Terminal,
	folder: string,
	{ json, recipe }: { json?: true; recipe: "whole" | "none" },
): number {
	const { car, title } = openFolder(folder);
	const answer = rulesAnswer(car, whichOf(recipe));
	if (json) printJson(terminal, answer);
	else terminal.out(text(terminal, title, answer));
	const misfit = reportMisfits(terminal, answer.misfits);
	return answer.findings.some(({ severity }) => severity !== "note") ? EXIT.findings : misfit;
}

function text(terminal: Terminal, title: string, { of, findings }: RulesAnswer): string {
	const count = (severity: Finding["severity"]) =>
		`${findings.filter((finding) => finding.severity === severity).length} ${severity}`;
	const sum =
		findings.length === 0 ? "every rule holds" : `${count("stop")}, ${count("warn")}, ${count("note")}`;
	const blocks = findings.map((finding) => `\n${block(terminal, finding)}\n`);
	const head = indented(`${title}, loom ${whichWords(of)}: ${sum}`, 0, terminal.columns);
	return `${head}\n${blocks.join("")}`;
}

function block(terminal: Terminal, { severity, rule, where, why, mend, cautions }: Finding): string {
	const line = (name: string, words: string) => named(name, words, terminal.columns, 2, 7);
	return [
		`${paint(terminal, COLOURS[severity], severity.toUpperCase())}  ${rule}`,
		line("where", where),
		line("why", why),
		line("mend", mend),
		...cautions.map((caution) => line("caution", caution)),
	].join("\n");
}

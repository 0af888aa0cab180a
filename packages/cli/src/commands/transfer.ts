import { type TransferAnswer, transferAnswer } from "@loomwright/shop";
import { EXIT } from "../failure.js";
import type { Terminal } from "../terminal.js";
import { paint } from "../text/paint.js";
import { indented, named } from "../text/wrap.js";
import { openFolder, printJson } from "./open.js";
import { writeFiles } from "./write-files.js";

interface Options {
	readonly json?: true;
	/** Folder into which the draft for the other car is written. */
	readonly out?: string;
}

/** Says what of one car's recipe can be done on another. */
export function transfer(terminal: Terminal, from: string, to: string, { json, out }: Options): number {
	const [car, other] = [openFolder(from), openFolder(to)];
	const answer = transferAnswer(car.car, other.car);
	if (out !== undefined) writeFiles(out, answer.files);
	if (json) printJson(terminal, answer);
	else terminal.out(`${transferText(terminal, car.title, other.title, answer)}\n`);
	const clear = answer.counts.applies === answer.steps.length && answer.left.length === 0;
	return clear ? EXIT.fine : EXIT.findings;
}

function transferText(terminal: Terminal, from: string, to: string, answer: TransferAnswer): string {
	const { columns } = terminal;
	const { counts, steps, left, differences } = answer;
	const head = `The recipe of ${from} on ${to}: ${counts.applies} of ${steps.length} steps apply, ${counts.decide} need a decision, ${counts["not here"]} cannot be done. The cars differ in ${differences.length} places; --json names them.`;
	const block = (title: string, verdict: "decide" | "not here") => {
		const listed = steps.filter((step) => step.verdict === verdict);
		if (listed.length === 0) return [];
		const lines = listed.map((step) =>
			[
				named(step.step, `${step.kind}: ${step.title}`, columns, 2),
				...step.reasons.map(({ kind, text }) => named("-", `${text} (${kind})`, columns, 6)),
			].join("\n"),
		);
		return [`\n${paint(terminal, "bold", title)}\n${lines.join("\n")}`];
	};
	return [
		indented(head, 0, columns),
		...block("To decide", "decide"),
		...block("Cannot be done here", "not here"),
		...(left.length === 0 ? [] : [`\n${named("left bare", left.join(", "), columns)}`]),
	].join("\n");
}

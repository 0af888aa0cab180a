import { openCar } from "@loomwright/engine";
import { type PlanAnswer, planAnswer, readFolder } from "@loomwright/shop";
import { EXIT } from "../failure.js";
import type { Terminal } from "../terminal.js";
import { paint } from "../text/paint.js";
import { percent } from "../text/quantity.js";
import { table } from "../text/table.js";
import { indented, named } from "../text/wrap.js";
import { printJson } from "./open.js";
import { writeFiles } from "./write-files.js";

interface Options {
	readonly json?: true;
	/** Folder into which the proposal's tables are written. */
	readonly out?: string;
}

/** Proposes a recipe for what targets.csv wants. */
export async function plan(terminal: Terminal, folder: string, { json, out }: Options): Promise<number> {
	const { tables, title } = readFolder(folder);
	const answer = await planAnswer(openCar(tables), tables);
	if (out !== undefined && answer.possible) writeFiles(out, answer.files);
	if (json) printJson(terminal, answer);
	else
		terminal.out(
			`${answer.possible ? proposalText(terminal, title, answer) : hopelessText(terminal, title, answer)}\n`,
		);
	return answer.possible && answer.misfits.length === 0 ? EXIT.fine : EXIT.findings;
}

function hopelessText({ columns }: Terminal, title: string, { hopeless }: PlanAnswer): string {
	const head = `${title}: nothing is proposed, ${hopeless.length === 1 ? "one circuit" : `${hopeless.length} circuits`} cannot be made.`;
	return [
		indented(head, 0, columns),
		"",
		...hopeless.map(({ circuit, why }) => named(circuit, why, columns, 2)),
	].join("\n");
}

const minutes = (value: number): string => `${Math.round(value)}`;

function proposalText(terminal: Terminal, title: string, answer: PlanAnswer): string {
	const { columns } = terminal;
	const { price, gap, byHand, choices } = answer;
	const joints = choices.reduce((sum, one) => sum + one.joints, 0);
	const proved =
		gap < 1e-6 ? "No other choice of these costs less." : `At most ${percent(gap)} above the least.`;
	const head = `${title}: ${answer.way}, ${minutes(answer.minutes)} minutes in all: ${minutes(price.minutes)} of work, ${price.material.toFixed(2)} of material, ${minutes(price.risk)} minutes of risk; ${joints} joints. ${proved}`;
	const hand =
		byHand === null
			? []
			: [`recipe.csv in the same prices: ${minutes(byHand.minutes)} minutes, ${byHand.joints} joints.`];
	const heading = (text: string) => paint(terminal, "bold", text);
	const right = (text: string) => ({ title: text, align: "right" as const });
	const circuits = table(
		[
			{ title: "circuit" },
			{ title: "way" },
			{ title: "how" },
			right("minutes"),
			{ title: "second best" },
			right("more"),
		],
		choices.map((one) => [
			one.circuit,
			one.way,
			one.text,
			minutes(one.price.minutes),
			one.second === null ? "none" : `${one.second.way}: ${one.second.text}`,
			one.second === null ? "" : one.second.moreMinutes.toFixed(1),
		]),
		columns,
	);
	const others = table(
		[{ title: "way" }, right("minutes"), right("joints")],
		answer.alternatives.map((one) => [
			one.way,
			one.minutes === null ? "not possible" : minutes(one.minutes),
			String(one.joints),
		]),
		columns,
	);
	const steps = table(
		[{ title: "step" }, { title: "kind" }, { title: "what" }, { title: "at" }],
		answer.steps.map(({ step, kind, title: what, place }) => [step, kind, what, place]),
		columns,
	);
	return [
		indented(head, 0, columns),
		...hand.map((line) => indented(line, 0, columns)),
		`\n${heading("Circuits")}\n${circuits}`,
		`\n${heading("The whole, done another way")}\n${others}`,
		`\n${heading("Recipe")}\n${steps}`,
		indented(
			"\nPrices are the shop's own (costs.csv) or common practice, no source. The maker's procedures come first.",
			0,
			columns,
		),
	].join("\n");
}

/** @throws BadInput when the files cannot be written */

import { parseEvidence } from "@loomwright/engine";
import { type FindAnswer, findAnswer, knownInShop, readText } from "@loomwright/shop";
import type { Terminal } from "../terminal.js";
import { paint } from "../text/paint.js";
import { percent } from "../text/quantity.js";
import { table } from "../text/table.js";
import { indented, named } from "../text/wrap.js";
import { openFolder, printJson, reportMisfits, whichOf, whichWords } from "./open.js";

interface Options {
	readonly json?: true;
	readonly recipe?: "whole" | "none";
	readonly evidence: string;
	readonly top: number;
	/** Data folder of the shop whose repairs are counted. */
	readonly shop?: string;
}

export async function find(terminal: Terminal, folder: string, options: Options): Promise<number> {
	const { car } = openFolder(folder);
	const read = parseEvidence(readText(options.evidence), options.evidence);
	const of = options.recipe === undefined ? read.of : whichOf(options.recipe);
	const known = options.shop === undefined ? undefined : await knownInShop(options.shop);
	const answer = findAnswer(car, { ...read, of }, known);
	if (options.json) printJson(terminal, answer);
	else terminal.out(findText(terminal, answer, options.top));
	return reportMisfits(terminal, answer.misfits);
}

/** @param top faults to show */
export function findText(terminal: Terminal, answer: FindAnswer, top: number): string {
	const { columns } = terminal;
	const { title, of, faults, sound, next, others, actions, contradictions, considered, settled, bits } =
		answer;
	const shown = faults.slice(0, top);
	const rows = shown.map((fault, at) => [
		String(at + 1),
		percent(fault.posterior),
		fault.kind,
		fault.where,
		fault.place,
	]);
	const titles = [
		{ title: "#", align: "right" as const },
		{ title: "chance", align: "right" as const },
		{ title: "fault" },
		{ title: "where" },
		{ title: "place" },
	];
	const compared = `${considered.singles} single faults, ${considered.common} common causes and ${considered.pairs} pairs compared`;
	const hidden = faults.length > top ? `; ${faults.length - top} less probable ones not shown` : "";
	const parts = [
		indented(`${title === "" ? "Evidence" : title}, loom ${whichWords(of)}`, 0, columns),
		table(titles, rows, columns),
		indented(`The loom is sound: ${percent(sound)}. ${compared}${hidden}.`, 0, columns),
		...contradictions.map((one) => named("Does not fit", one, columns)),
		...shown.slice(0, 1).map((fault) => leading(terminal, fault)),
		...(actions.length > 0 ? [doing(actions, columns)] : []),
		settled
			? "Settled: nothing more need be measured before the mending."
			: `About ${Math.ceil(bits)} more ${Math.ceil(bits) === 1 ? "reading" : "readings"} at the least.`,
		next === null
			? "No reading would say more."
			: `${paint(terminal, "bold", "Next")}\n${step(next, columns)}${instead(others, columns)}`,
	];
	return `${parts.join("\n\n")}\n`;
}

function leading(terminal: Terminal, { grounds, mend, alike }: FindAnswer["faults"][number]): string {
	const { columns } = terminal;
	const why = grounds.map(({ text, times }) => `\n${named(timesText(times), text, columns, 2, 14)}`);
	const same = alike.length > 0 ? `\n${named("not told from", alike.join(", "), columns, 2, 14)}` : "";
	return `${paint(terminal, "bold", "Why number 1")}${why.join("")}${same}\n${named("mend", mend, columns, 2, 14)}`;
}

/** `x 120`: so many times as likely under the fault as on a sound car. */
const timesText = (times: number): string =>
	times > 1e6 ? "over a million x" : times < 1e-6 ? "under 1e-6 x" : `${Number(times.toPrecision(2))} x`;

function step(
	{ text, minutes, bits, because, outcomes, cautions }: NonNullable<FindAnswer["next"]>,
	columns: number,
): string {
	const line = (name: string, words: string) => named(name, words, columns, 2, 7);
	return [
		line("do", text),
		line("takes", `${Number(minutes.toPrecision(2))} minutes for ${Number(bits.toPrecision(2))} bits`),
		line("because", because),
		...outcomes.map((one) => line("if", `${one.text} (${percent(one.chance)}): ${one.favours}`)),
		...cautions.map((caution) => line("caution", caution)),
	].join("\n");
}

/** Connectors and relays worth reseating before anything is measured. */
function doing(actions: FindAnswer["actions"], columns: number): string {
	const rows = actions.map(({ text, place, minutes, bits }) => [
		`${text}; ${place}`,
		`${Number(minutes.toPrecision(2))} min`,
		`${Number(bits.toPrecision(2))} bits`,
	]);
	const titles = [
		{ title: "worth doing" },
		{ title: "takes", align: "right" as const },
		{ title: "says", align: "right" as const },
	];
	return table(titles, rows, columns);
}

function instead(others: FindAnswer["others"], columns: number): string {
	if (others.length === 0) return "";
	const rows = others.map(({ text, minutes, bits }) => [
		text,
		`${Number(minutes.toPrecision(2))} min`,
		`${Number(bits.toPrecision(2))} bits`,
	]);
	const titles = [
		{ title: "or" },
		{ title: "takes", align: "right" as const },
		{ title: "says", align: "right" as const },
	];
	return `\n\n${table(titles, rows, columns)}`;
}

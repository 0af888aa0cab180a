import { type SizeAnswer, sizeAnswer } from "@loomwright/shop";
import { EXIT } from "../failure.js";
import type { Terminal } from "../terminal.js";
import { paint } from "../text/paint.js";
import { table } from "../text/table.js";
import { GLUE, indented } from "../text/wrap.js";
import { openFolder, printJson, reportMisfits, whichOf, whichWords } from "./open.js";

type Wire = SizeAnswer["wires"][number];
type Splice = SizeAnswer["splices"][number];

export function size(
	terminal: Terminal,
	folder: string,
	{ json, recipe, all }: { json?: true; recipe: "whole" | "none"; all?: true },
): number {
	const { car, title } = openFolder(folder);
	const answer = sizeAnswer(car, whichOf(recipe));
	if (json) printJson(terminal, answer);
	else terminal.out(text(terminal, title, answer, all === true));
	const misfit = reportMisfits(terminal, answer.misfits);
	return wrongOf(answer).length > 0 ? EXIT.findings : misfit;
}

/** What does not do, in sentences. */
function wrongOf({ wires, fuses, loads }: SizeAnswer): string[] {
	return [
		...wires.flatMap(({ wire, mm2, suffices, needed, celsius, fuse }) => {
			if (suffices) return [];
			const why =
				needed?.because === "fuse"
					? `behind ${fuse}`
					: celsius === null
						? "it burns"
						: `it comes to ${celsius.toFixed(0)} C`;
			return [
				`Wire ${wire}, ${mm2}${GLUE}mm2: ${why}; ${needed ? `at least ${needed.mm2}${GLUE}mm2 or ${needed.awg}${GLUE}AWG` : "no size on the shelf does"}.`,
			];
		}),
		...fuses.flatMap(({ fuse, amps, faults }) =>
			faults.map((fault) => `Fuse ${fuse}, ${amps}${GLUE}A, ${fault}.`),
		),
		...loads.flatMap(({ part, element, when, feedVolts, groundVolts, suffices }) =>
			suffices
				? []
				: [
						`${element.includes(".") ? element : part} in ${when}: the feed loses ${feedVolts.toFixed(2)}${GLUE}V, the ground ${groundVolts.toFixed(2)}${GLUE}V.`,
					],
		),
	];
}

function text(terminal: Terminal, title: string, answer: SizeAnswer, all: boolean): string {
	const wrong = wrongOf(answer);
	const { wires, splices, of } = answer;
	const head = `${title}, loom ${whichWords(of)}: ${wrong.length === 0 ? "every size does" : `${wrong.length} that do not do`}`;
	const shown = <T extends { readonly worked: boolean }>(rows: readonly T[]) =>
		all || of === "delivered" ? rows : rows.filter((row) => row.worked);
	const section = (heading: string, body: string) =>
		body === "" ? "" : `\n${paint(terminal, "bold", heading)}\n${body}\n`;
	return [
		`${indented(head, 0, terminal.columns)}\n`,
		wrong.length > 0 ? `\n${wrong.map((line) => indented(line, 0, terminal.columns)).join("\n")}\n` : "",
		section(
			all ? "Wires" : "Wires that the recipe makes or works on",
			wireTable(shown(wires), terminal.columns),
		),
		section("Ends", endTable(shown(wires), terminal.columns)),
		section("Splices", spliceTable(shown(splices), terminal.columns)),
	].join("");
}

const number = (value: number, digits = 2) => String(Number(value.toPrecision(digits)));
const right = (title: string) => ({ title, align: "right" as const });

function wireTable(wires: readonly Wire[], columns: number): string {
	if (wires.length === 0) return "";
	const titles = [
		...[
			{ title: "wire" },
			right("mm2"),
			right("AWG"),
			right("A"),
			right("at first A"),
			right("V lost"),
			right("C"),
		],
		...[{ title: "fuse" }, right("least mm2"), { title: "because" }],
	];
	const rows = wires.map(({ wire, mm2, awg, brief, rush, start, volts, celsius, fuse, needed }) => [
		...[wire, String(mm2), awg, number(brief.amps), number(Math.max(rush.amps, start.amps)), number(volts)],
		...[
			celsius === null ? "burns" : celsius.toFixed(0),
			fuse,
			needed ? String(needed.mm2) : "none",
			needed?.because ?? "",
		],
	]);
	return table(titles, rows, columns);
}

function endTable(wires: readonly Wire[], columns: number): string {
	const rows = wires.flatMap(({ wire, ends }) =>
		ends.map(({ at, terminal, stripMm, pullNewtons, sealMm }) => [
			...[wire, at, terminal, String(stripMm?.value ?? "")],
			...[String(pullNewtons?.value ?? ""), String(sealMm?.value ?? "")],
		]),
	);
	const titles = [
		{ title: "wire" },
		{ title: "at" },
		{ title: "terminal" },
		right("strip mm"),
		right("pull N"),
		right("seal mm"),
	];
	return rows.length === 0 ? "" : table(titles, rows, columns);
}

function spliceTable(splices: readonly Splice[], columns: number): string {
	const rows = splices.map(({ splice, wires, kind, barrelMm2, sleeveMm, stripMm, pullNewtons, wet }) => [
		...[
			splice,
			wires.join(", "),
			kind,
			String(barrelMm2?.value ?? "none"),
			String(sleeveMm?.value ?? "none"),
		],
		...[String(stripMm?.value ?? ""), String(pullNewtons?.value ?? ""), wet ? "wet" : ""],
	]);
	const titles = [
		...[{ title: "splice" }, { title: "wires" }, { title: "kind" }, right("barrel mm2"), right("sleeve mm")],
		...[right("strip mm"), right("pull N"), { title: "place" }],
	];
	return rows.length === 0 ? "" : table(titles, rows, columns);
}

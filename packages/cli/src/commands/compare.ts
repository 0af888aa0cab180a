import type { Car } from "@loomwright/engine";
import { type CompareAnswer, compareAnswer } from "@loomwright/shop";
import type { Terminal } from "../terminal.js";
import { paint } from "../text/paint.js";
import { table } from "../text/table.js";
import { GLUE, indented } from "../text/wrap.js";
import { openFolder, printJson, reportMisfits } from "./open.js";

type Change = CompareAnswer["changes"][number];

export function compare(terminal: Terminal, folder: string, { json }: { json?: true }): number {
	const { car, title } = openFolder(folder);
	const answer = compareAnswer(car);
	if (json) printJson(terminal, answer);
	else {
		const { length } = answer.changes;
		terminal.out(
			`${title}: ${length === 0 ? "no change" : length === 1 ? "1 change" : `${length} changes`}\n`,
		);
		for (const [heading, changes] of groups(car, answer.changes))
			terminal.out(
				`\n${paint(terminal, "bold", indented(heading, 0, terminal.columns))}\n${listed(changes, terminal.columns)}\n`,
			);
	}
	return reportMisfits(terminal, answer.misfits);
}

/** By connector, then what has none: parts, joints, wires. In the order of the answer. */
function groups(car: Car, changes: readonly Change[]): Map<string, Change[]> {
	const found = new Map<string, Change[]>();
	for (const change of changes) {
		const heading = headingOf(car, change);
		found.set(heading, [...(found.get(heading) ?? []), change]);
	}
	return found;
}

function headingOf(car: Car, { connector, contact, part, joint }: Change): string {
	const id = connector || (contact && part);
	if (id === "")
		return joint !== ""
			? "Splices, bars and ground points"
			: part !== ""
				? "Parts"
				: "Wires with no connector";
	const there = car.converted.parts.get(id) ?? car.delivered.parts.get(id);
	const words = [there?.label, there?.place].filter((word) => word);
	return `${id}  ${words.join("; ")}`.trimEnd();
}

/** A table where wires come and go, sentences for the rest. */
function listed(changes: readonly Change[], columns: number): string {
	const wired = changes.filter(({ before, after }) => before || after);
	const rest = changes.filter(({ before, after }) => !before && !after);
	const sentences = rest.map((change) => indented(change.text, 0, columns));
	if (wired.length === 0) return sentences.join("\n");
	const rows = wired.map((change) => [
		change.cavity,
		change.contact,
		change.kind,
		end(change.before),
		end(change.after),
	]);
	const titles = ["cavity", "contact", "change", "before", "after"].map((title) => ({ title }));
	return [...sentences, table(titles, rows, columns)].join("\n");
}

/** `W10a GYRD 1.5 mm2 by SN1 to S-WRK.1 (0.6 m)` */
function end(joined: Change["before"]): string {
	if (joined === null) return "no wire";
	const { wire, colour, mm2, leads } = joined;
	const splices = [...new Set(leads.flatMap((lead) => lead.splices))];
	const by = splices.length > 0 ? ` by ${splices.join(", ")}` : "";
	const to = leads.map(({ place, metres }) => `${place} (${metres}${GLUE}m)`).join(", ");
	return `${wire} ${colour === "" ? "" : `${colour} `}${mm2}${GLUE}mm2${by} to ${to}`;
}

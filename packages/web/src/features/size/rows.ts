/** What is sized, as rows of a list: what it is and carries, and whether it does. */
import { naturalOrder } from "@loomwright/engine";
import type { Sizes } from "../../engine/protocol.js";
import type { ListRow } from "../../shared/ListAndDetail.js";
import { lengthWords } from "../../shared/wire-words.js";
import { amount, count } from "../../shared/words.js";

export const SORTS = ["wires", "fuses", "loads", "splices"] as const;
export type Sort = (typeof SORTS)[number];

export const SCOPES = ["worked", "all", "wrong"] as const;
export type Scope = (typeof SCOPES)[number];

export interface SizeRow extends ListRow {
	/** The recipe makes it or works on it, or it feeds or is fed by such a wire. */
	readonly worked: boolean;
	readonly does: boolean;
}

const DOES = { end: "fine", endLabel: "It is made for what it carries" };
const WRONG = { end: "to mend", endLabel: "It is not made for what it carries", tone: "stop" };

/** @param what the wire, fuse or splice itself, in words */
export function sizeRows(sizes: Sizes, sort: Sort, what: (id: string) => string): SizeRow[] {
	const worked = new Set(sizes.worked);
	const row = (id: string, title: string, text: string, touched: boolean, does: boolean): SizeRow => ({
		...{ id, title, text, worked: touched, does },
		...(does ? DOES : WRONG),
	});
	switch (sort) {
		case "wires":
			return sizes.wires.map(({ wire, mm2, metres, steady, celsius, suffices }) =>
				row(
					wire,
					wire,
					`${mm2} mm², ${lengthWords(metres)}, ${amount(steady.amps, "A")}, ${degrees(celsius)}`,
					worked.has(wire),
					suffices,
				),
			);
		case "fuses":
			return sizes.fuses.map(({ fuse, amps, steady, wires, faults }) =>
				row(
					fuse,
					`${fuse}, ${amps} A`,
					`${what(fuse)}: ${amount(steady.amps, "A")}, ${count(wires.length, "wire")} behind it`,
					wires.some((wire) => worked.has(wire)),
					faults.length === 0,
				),
			);
		case "loads":
			return sizes.loads.map(({ part, element, amps, feedVolts, groundVolts, suffices }) =>
				row(
					loadId({ part, element }),
					loadId({ part, element }),
					`${what(part)}: ${amount(amps, "A")}, ${amount(feedVolts, "V")} and ${amount(groundVolts, "V")} lost`,
					false,
					suffices,
				),
			);
		case "splices":
			return sizes.splices.map(({ splice, kind, wires, sleeveMm, barrelMm2 }) =>
				row(
					splice,
					splice,
					`${kind}, ${count(wires.length, "wire")}, ${what(splice)}`,
					worked.has(splice),
					sleeveMm !== undefined && barrelMm2 !== undefined,
				),
			);
	}
}

export const loadId = ({ part, element }: { part: string; element: string }): string =>
	element.includes(".") || element === "" ? element || part : `${part} ${element}`;

export const degrees = (celsius: number): string =>
	Number.isFinite(celsius) ? `${Math.round(celsius)} °C` : "it burns";

/** Those of the scope that have every word; what does not do first, then in the order one looks for names. */
export function shownRows(rows: readonly SizeRow[], scope: Scope, text: string): SizeRow[] {
	const words = text.toLowerCase().split(/\s+/).filter(Boolean);
	return rows
		.filter(({ worked, does }) => scope === "all" || (scope === "worked" ? worked : !does))
		.filter((row) => words.every((word) => `${row.title} ${row.text}`.toLowerCase().includes(word)))
		.sort((one, other) => Number(one.does) - Number(other.does) || naturalOrder(one.id, other.id));
}

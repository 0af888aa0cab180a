import { type Car, openCar, type Which } from "@loomwright/engine";
import { type MisfitAnswer, readFolder } from "@loomwright/shop";
import { EXIT } from "../failure.js";
import type { Terminal } from "../terminal.js";
import { table } from "../text/table.js";

/** @throws BadInput when there is no such folder, TableErrors with every error of its tables */
export function openFolder(folder: string): {
	car: Car;
	title: string;
	tables: Readonly<Record<string, string>>;
} {
	const { tables, title } = readFolder(folder);
	return { car: openCar(tables), title, tables };
}

export const whichOf = (recipe: "whole" | "none" | undefined): Which =>
	recipe === "none" ? "delivered" : "converted";

/** `as converted`, `as delivered` */
export const whichWords = (which: Which): string => `as ${which}`;

export function printJson(terminal: Terminal, answer: unknown): void {
	terminal.out(`${JSON.stringify(answer, undefined, "\t")}\n`);
}

/** Says on stderr which recipe steps do not fit; gives the exit code that this makes. */
export function reportMisfits(terminal: Terminal, misfits: readonly MisfitAnswer[]): number {
	if (misfits.length === 0) return EXIT.fine;
	const rows = misfits.map(({ step, kind, row, column, problem, wanted }) => [
		step,
		kind,
		String(row),
		column,
		problem,
		wanted,
	]);
	const columns = ["step", "kind", "row", "column", "problem", "what would be right"];
	const what = misfits.length === 1 ? "1 recipe step does" : `${misfits.length} recipe steps do`;
	terminal.err(`${what} not fit this car; the answer is without them:\n`);
	terminal.err(
		`${table(
			columns.map((title) => ({ title })),
			rows,
			terminal.columns,
		)}\n`,
	);
	return EXIT.findings;
}

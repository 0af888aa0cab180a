import type { Parsed } from "../units/index.js";
import { parseList } from "./cells.js";
import type { TableError } from "./errors.js";
import { didYouMean } from "./nearest.js";

/**
 * One row of a table, read cell by cell. What cannot be read is appended to the table's errors and
 * marks the row `faulty`; reading goes on, so that all errors of a row are found at once.
 */
export class Row<Column extends string> {
	/** True once any cell of the row was refused. */
	faulty = false;

	constructor(
		readonly file: string,
		/** As a spreadsheet counts: the header is row 1. */
		readonly row: number,
		private readonly cells: readonly string[],
		private readonly index: ReadonlyMap<string, number>,
		private readonly errors: TableError[],
	) {}

	/** The cell without white space around it; empty where the column is not in the table. */
	text(column: Column): string {
		return this.cells[this.index.get(column) ?? -1]?.trim() ?? "";
	}

	/** The cell through a reader of the units room; undefined where it is empty or was refused. */
	read<T>(column: Column, parse: (text: string) => Parsed<T>): T | undefined {
		const text = this.text(column);
		if (text === "") return undefined;
		const parsed = parse(text);
		if (parsed.ok) return parsed.value;
		this.refuse(column, parsed.problem, parsed.wanted);
		return undefined;
	}

	/** The cell, which must be one of these words; `fallback` where it is empty or was refused. */
	choice<Word extends string>(column: Column, words: readonly Word[], fallback: Word): Word {
		const text = this.text(column);
		if (text === "") return fallback;
		const word = words.find((known) => known === text);
		if (word !== undefined) return word;
		this.refuseWord(column, text, words);
		return fallback;
	}

	/** The words of a list cell, each of which must be one of these. */
	list(column: Column, words: readonly string[]): readonly string[] {
		const list = parseList(this.text(column));
		for (const word of list) if (!words.includes(word)) this.refuseWord(column, word, words);
		return list;
	}

	/** Reports what is wrong in a cell, or with the whole row (`column` empty). */
	refuse(column: Column | "", problem: string, wanted: string): void {
		this.faulty = true;
		this.errors.push({ file: this.file, row: this.row, column, problem, wanted });
	}

	private refuseWord(column: Column, text: string, words: readonly string[]): void {
		const listed = words.filter((word) => word !== "").map((word) => `"${word}"`);
		this.refuse(
			column,
			`"${text}" is not known here`,
			didYouMean(text, words, `one of ${listed.join(", ")}`),
		);
	}
}

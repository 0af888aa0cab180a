/** A car's folder on disk: its tables, its title, its practice evidence. */
import { readdirSync, readFileSync } from "node:fs";
import { basename, join, resolve } from "node:path";
import { BadInput } from "../answers/errors.js";

export interface CarFolder {
	/** Absolute. */
	readonly folder: string;
	/** The first heading of its README.md, else the folder's name. */
	readonly title: string;
	/** File name to text, of every table file. */
	readonly tables: Readonly<Record<string, string>>;
	/** File name to text, of every JSON file in `practice/`. */
	readonly practice: Readonly<Record<string, string>>;
}

/** @throws BadInput when it is no folder, cannot be read, or has no table in it */
export function readFolder(path: string): CarFolder {
	const folder = resolve(path);
	const tables = filesIn(folder, /\.(csv|tsv|tab|txt)$/i);
	if (Object.keys(tables).length === 0)
		throw new BadInput(
			"there are no tables in this folder",
			"parts.csv, contacts.csv, wires.csv (docs/tables.md)",
			path,
		);
	const readme = filesIn(folder, /^readme\.md$/i);
	const heading = /^#\s+(.+)$/m.exec(Object.values(readme)[0] ?? "")?.[1]?.trim();
	const practice = readdirSync(folder).includes("practice")
		? filesIn(join(folder, "practice"), /\.json$/i)
		: {};
	return { folder, title: heading ?? basename(folder), tables, practice };
}

/** Reads one file as UTF-8. @throws BadInput when that cannot be done */
export function readText(path: string): string {
	try {
		return new TextDecoder("utf-8", { fatal: true }).decode(readFileSync(path));
	} catch (error) {
		throw new BadInput(reason(error, "file"), "a text file in UTF-8", path);
	}
}

function filesIn(folder: string, pattern: RegExp): Record<string, string> {
	let names: string[];
	try {
		names = readdirSync(folder, { withFileTypes: true })
			.filter((entry) => !entry.isDirectory() && pattern.test(entry.name))
			.map((entry) => entry.name)
			.sort();
	} catch (error) {
		throw new BadInput(reason(error, "folder"), "the folder of a car's tables", folder);
	}
	return Object.fromEntries(names.map((name) => [name, readText(join(folder, name))]));
}

function reason(error: unknown, what: "file" | "folder"): string {
	switch ((error as NodeJS.ErrnoException).code) {
		case "ERR_ENCODING_INVALID_ENCODED_DATA":
			return "this file is not UTF-8; save it as CSV UTF-8 from the spreadsheet";
		case "ENOENT":
			return `there is no such ${what}`;
		case "ENOTDIR":
			return "this is a file, not a folder";
		case "EISDIR":
			return "this is a folder, not a file";
		case "EACCES":
			return `this ${what} may not be read`;
		default:
			return (error as Error).message;
	}
}

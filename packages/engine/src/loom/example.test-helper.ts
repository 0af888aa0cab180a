import { readFileSync } from "node:fs";

/** Every fenced block of docs/tables.md: its language, its title, and its text. */
export function documentBlocks(): readonly {
	readonly language: string;
	readonly title: string;
	readonly text: string;
}[] {
	const document = readFileSync(new URL("../../../../docs/tables.md", import.meta.url), "utf8");
	return [...document.matchAll(/^```(\w+) ?(.*)\n([\s\S]*?)^```$/gm)].map(([, language, title, text]) => ({
		language: language!,
		title: title!,
		text: text!,
	}));
}

/** The tables of the worked example in docs/tables.md, by file name. */
export function exampleTables(): Record<string, string> {
	const tables = documentBlocks().filter(({ title }) => title.endsWith(".csv"));
	return Object.fromEntries(tables.map(({ title, text }) => [title, text]));
}

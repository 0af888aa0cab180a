/** The engine's page: its example runs and prints what it says, its names are those of the package. */
import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import * as engine from "./index.js";

const read = (file: string) => readFileSync(new URL(file, import.meta.url), "utf8");
const page = read("../README.md");

/** Text of the first fenced block that begins so. */
function block(text: string, fence: string): string {
	const from = text.indexOf(`\n\`\`\`${fence}\n`);
	expect(from, fence).toBeGreaterThan(-1);
	const start = from + fence.length + 5;
	return text.slice(start, text.indexOf("\n```", start));
}

/** Names in code in the first column of the page's tables. */
const named = [...page.matchAll(/^\| (`.*?`) \|/gm)].flatMap(([, cell]) =>
	[...cell!.matchAll(/`(\w+)`/g)].map(([, name]) => name!),
);

test("the example prints what the page says", () => {
	const tables = read("../../../docs/tables.md");
	const names = ["parts.csv", "contacts.csv", "joints.csv", "wires.csv", "conditions.csv"];
	const files = Object.fromEntries(names.map((name) => [name, block(tables, `csv ${name}`)]));
	const code = block(page, "js").replace(
		/^import (\{.*?\}) from "@loomwright\/engine";/,
		"const $1 = engine;",
	);
	const printed: string[] = [];
	const run = new Function("engine", "files", "console", code) as (...given: unknown[]) => void;
	run(engine, files, { log: (line: string) => printed.push(line) });
	expect(printed.join("\n")).toBe(block(page, "text"));
});

test("every name on the page is exported, and everything of the network is on the page", () => {
	const exported = new Map<string, string>();
	for (const [, list, room] of read("index.ts").matchAll(/export \{([^}]*)\} from "\.\/([\w-]+)/g))
		for (const entry of list!.split(",")) {
			const name = entry
				.trim()
				.replace(/^type /, "")
				.split(" as ")
				.at(-1)!;
			if (name !== "") exported.set(name, room!);
		}
	expect(named.filter((name) => !exported.has(name))).toEqual([]);
	const network = [...exported].filter(([, room]) => room === "circuit" || room === "batches");
	expect(network.length).toBeGreaterThan(15);
	// The page tells of an error in its own paragraph.
	expect(network.map(([name]) => name).filter((name) => !page.includes(`\`${name}\``))).toEqual([]);
});

test("the page is one page", () => {
	expect(page.split("\n").length).toBeLessThan(125);
});

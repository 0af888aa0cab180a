import { expect, test } from "vitest";
import type { Entry } from "../store/entry/append.js";
import { fingerprint } from "../store/jobs.js";
import { recipeVersions, textsOf } from "./versions.js";

const entry = (id: string, ...files: [name: string, before: string, after: string][]): Entry =>
	({
		...{ id, kind: "tables", time: `2030-05-0${id}T08:00:00Z`, person: "Kim" },
		body: {
			files: files.map(([name, before, after]) => ({ name, before: mark(before), after: mark(after) })),
		},
	}) as unknown as Entry;

const mark = (text: string) => (text === "" ? "" : fingerprint(text));

test("a text replaced before texts were kept cannot be read; the versions are there all the same", () => {
	const entries = [
		entry("1", ["recipe.csv", "a", "b"]),
		entry("2", ["wires.csv", "w", "v"]),
		entry("3", ["recipe.csv", "b", "c"], ["targets.csv", "", "t"]),
	];
	const tables = { "recipe.csv": "c", "targets.csv": "t", "wires.csv": "v", "new-parts.csv": "n" };
	const versions = recipeVersions("2030-05-01T00:00:00Z", entries, tables);
	expect(versions.map(({ version, entry }) => [version, entry])).toEqual([
		[1, ""],
		[2, "1"],
		[3, "3"],
	]);
	const kept = new Map([[fingerprint("b"), "b"]]);
	expect(versions.map((version) => textsOf(version, tables, kept))).toEqual([
		undefined,
		{ "recipe.csv": "b", "new-parts.csv": "n" },
		{ "recipe.csv": "c", "targets.csv": "t", "new-parts.csv": "n" },
	]);
});

test("a job without any such table has one version, of nothing", () => {
	const [only, ...more] = recipeVersions("2030-05-01T00:00:00Z", [], { "wires.csv": "w" });
	expect([more, only && textsOf(only, {}, new Map())]).toEqual([[], {}]);
});

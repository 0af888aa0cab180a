/** The versions of a job's recipe, derived from its history: which text of each table stood when, by whom. */
import type { Entry } from "../store/entry/append.js";
import { type Files, fingerprint } from "../store/jobs.js";

/** Tables that make the recipe, and those that say what is wanted of it. */
const RECIPE = /^(recipe|new-parts|new-contacts|new-joints|targets|costs|places)\./;

export interface Version {
	/** From 1: the tables the job came with. */
	readonly version: number;
	/** When it came, ISO 8601, UTC. */
	readonly time: string;
	/** Empty: it came with the job. */
	readonly person: string;
	/** Id of the entry that brought it; empty: it came with the job. */
	readonly entry: string;
	/** Files that are not as in the version before. */
	readonly changed: readonly string[];
	/** File name to fingerprint of its text. */
	readonly files: ReadonlyMap<string, string>;
}

/**
 * @param created when the job came, ISO 8601, UTC
 * @param entries of the kind `tables`, in order
 * @param tables as they stand
 */
export function recipeVersions(created: string, entries: readonly Entry[], tables: Files): Version[] {
	const changes = entries.flatMap((entry) => {
		const files = entry.kind === "tables" ? entry.body.files.filter(({ name }) => RECIPE.test(name)) : [];
		return files.length === 0 ? [] : [{ entry, files }];
	});
	const first = new Map(
		Object.entries(tables).flatMap(([name, text]) => (RECIPE.test(name) ? [[name, fingerprint(text)]] : [])),
	);
	for (const { files } of changes.toReversed())
		for (const { name, before } of files) set(first, name, before);
	const versions: Version[] = [
		{ version: 1, time: created, person: "", entry: "", changed: [], files: first },
	];
	for (const { entry, files } of changes) {
		const now = new Map(versions.at(-1)?.files);
		for (const { name, after } of files) set(now, name, after);
		const { time, person, id } = entry;
		const changed = files.map(({ name }) => name);
		versions.push({ version: versions.length + 1, time, person, entry: id, changed, files: now });
	}
	return versions;
}

/** An empty fingerprint stands for no file. */
function set(files: Map<string, string>, name: string, id: string): void {
	if (id === "") files.delete(name);
	else files.set(name, id);
}

/**
 * The texts of a version; undefined where one was replaced before replaced texts were kept.
 * @param texts fingerprint to text, of those that were kept
 */
export function textsOf(
	version: Version,
	tables: Files,
	texts: ReadonlyMap<string, string>,
): Files | undefined {
	const found: Record<string, string> = {};
	for (const [name, id] of version.files) {
		const now = tables[name];
		const text = fingerprint(now) === id ? now : texts.get(id);
		if (text === undefined) return undefined;
		found[name] = text;
	}
	return found;
}

/** The car's tables with the recipe of a version in place of its own. */
export function withRecipe(tables: Files, recipe: Files): Files {
	return {
		...Object.fromEntries(Object.entries(tables).filter(([name]) => !RECIPE.test(name))),
		...recipe,
	};
}

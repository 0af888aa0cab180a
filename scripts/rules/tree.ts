import { execFileSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import type { SourceFile } from "./layers.js";

const root = resolve(import.meta.dirname, "../..");

/** The text of one file of the tree, by its path from the root. */
export const textOf = (path: string): string => readFileSync(join(root, path), "utf8");

/** Every file of the tree that git keeps or would keep, by its path from the root. */
export function treeFiles(): string[] {
	const listed = execFileSync("git", ["ls-files", "-co", "--exclude-standard", "-z"], {
		cwd: root,
		encoding: "utf8",
	});
	return listed.split("\0").filter((path) => path !== "" && existsSync(join(root, path)));
}

/** The TypeScript sources of all packages. */
export const packageSources = (): SourceFile[] =>
	treeFiles()
		.filter((path) => /^packages\/[^/]+\/src\/.+\.tsx?$/.test(path))
		.map((path) => ({ path, text: textOf(path) }));

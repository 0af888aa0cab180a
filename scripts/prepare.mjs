#!/usr/bin/env node
/**
 * Makes the tree ready to run: installs the packages when the lock file, Node or the machine changed, and
 * builds what changed since the last build. Needs nothing but Node and npm, so it works on a fresh clone.
 *
 * Usage: node scripts/prepare.mjs build [--quiet]
 * All text goes to stderr; with --quiet there is none unless something fails. Exit code 1 on failure.
 */
import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { build } from "./prepare/build.mjs";
import { oldNode } from "./prepare/explain.mjs";
import { install } from "./prepare/install.mjs";
import { withLock } from "./prepare/lock.mjs";
import { PrepareError } from "./prepare/run.mjs";

const root = resolve(fileURLToPath(import.meta.url), "../..");
const [command, ...options] = process.argv.slice(2);
const quiet = options.includes("--quiet");
const unknown = options.filter((option) => option !== "--quiet");

/** @param {string} sentence */
const tell = (sentence) => {
	if (!quiet) process.stderr.write(`${sentence}\n`);
};

try {
	if (command !== "build" || unknown.length > 0)
		throw new PrepareError("Usage: node scripts/prepare.mjs build [--quiet]");
	const nodeProblem = oldNode(process.versions.node);
	if (nodeProblem) throw new PrepareError(nodeProblem);
	await withLock(join(root, ".prepare.lock"), tell, () => {
		install(root, { quiet, tell });
		build(root, { quiet, tell });
	});
} catch (error) {
	if (!(error instanceof PrepareError)) throw error;
	process.stderr.write(`${error.message}\n`);
	process.exit(1);
}

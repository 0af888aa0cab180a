#!/usr/bin/env node
/**
 * Every check of the tree, one after another; all run even when one fails. The last line is always
 * `N passed, N failed`: tests passed; tests and checks failed. Exit code 1 when anything failed.
 *
 * Usage: node scripts/test.mjs (after scripts/prepare.mjs build, as `npm test` does)
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { countTests, summaryLines } from "./test/summary.mjs";

const root = resolve(fileURLToPath(import.meta.url), "../..");
const scratch = mkdtempSync(join(tmpdir(), "loomwright-test-"));

/** @typedef {{ name: string, program: string, args: string[], tests?: boolean }} Step */

/** @type {Step[]} */
const STEPS = [
	{ name: "format and lint", program: "biome", args: ["check", "--error-on-warnings", "."] },
	{ name: "types", program: "tsc", args: ["-b", "tsconfig.check.json"] },
	{ name: "dead code", program: "knip", args: ["--no-config-hints"] },
	{ name: "tests", program: "vitest", args: ["run"], tests: true },
	{
		name: "browser tests",
		program: "vitest",
		args: ["run", "--config", "vitest.browser.config.ts"],
		tests: true,
	},
];

/**
 * @param {Step} step
 * @param {number} index
 * @returns {import("./test/summary.mjs").Outcome}
 */
function run({ name, program, args, tests }, index) {
	console.log(`\n== ${name}`);
	const report = join(scratch, `${index}.json`);
	const reporters = tests ? ["--reporter=dot", "--reporter=json", `--outputFile.json=${report}`] : [];
	const began = performance.now();
	const { status, error } = spawnSync(join(root, "node_modules/.bin", program), [...args, ...reporters], {
		cwd: root,
		stdio: ["ignore", "inherit", "inherit"],
		shell: process.platform === "win32",
	});
	if (error) console.error(`${program}: ${error.message}`);
	const seconds = (performance.now() - began) / 1000;
	return { name, ok: status === 0, seconds, counts: tests ? countTests(read(report)) : undefined };
}

/** @param {string} file @returns {string} empty when there is none, as when the runner did not start */
function read(file) {
	try {
		return readFileSync(file, "utf8");
	} catch {
		return "";
	}
}

const outcomes = STEPS.map(run);
rmSync(scratch, { recursive: true, force: true });
const { lines, failed } = summaryLines(outcomes);
console.log(`\n${lines.join("\n")}`);
process.exitCode = failed > 0 ? 1 : 0;

import { spawnSync } from "node:child_process";

/** A failure whose message already says what happened and what to do. */
export class PrepareError extends Error {}

/**
 * Runs a program to its end. Its output is kept for the error, and also passed on to stderr unless quiet, so
 * that stdout stays free for the command that follows.
 *
 * @param {string} root folder to run in
 * @param {string} file program
 * @param {string[]} args
 * @param {{ quiet: boolean, env?: NodeJS.ProcessEnv }} options
 * @returns {{ ok: boolean, output: string }}
 */
export function run(root, file, args, { quiet, env = process.env }) {
	const result = spawnSync(file, args, {
		cwd: root,
		env,
		encoding: "utf8",
		maxBuffer: 64 << 20,
		stdio: ["ignore", "pipe", "pipe"],
		shell: process.platform === "win32" && !file.endsWith(".exe"),
	});
	const output = `${result.error ? `${result.error.message}\n` : ""}${result.stdout ?? ""}${result.stderr ?? ""}`;
	const ok = result.status === 0;
	if (!quiet && ok && output.trim()) process.stderr.write(`${output.trimEnd()}\n`);
	return { ok, output };
}

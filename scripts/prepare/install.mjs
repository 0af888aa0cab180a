import { createHash } from "node:crypto";
import { existsSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { installFailure } from "./explain.mjs";
import { readStamp, writeStamp } from "./files.mjs";
import { PrepareError, run } from "./run.mjs";

/** @typedef {Record<string, { version?: string, link?: boolean, optional?: boolean, devOptional?: boolean, peer?: boolean }>} Locked */

/**
 * @param {string} file a package-lock.json
 * @returns {Locked}
 */
const packagesOf = (file) => JSON.parse(readFileSync(file, "utf8")).packages;

/**
 * Whether node_modules already holds what the lock file asks for, as after an `npm ci` by hand.
 *
 * @param {string} root
 */
function installedByHand(root) {
	const list = join(root, "node_modules/.package-lock.json");
	if (!existsSync(list)) return false;
	const have = packagesOf(list);
	for (const [path, want] of Object.entries(packagesOf(join(root, "package-lock.json")))) {
		if (!path.startsWith("node_modules/") || want.optional || want.devOptional || want.peer) continue;
		if (!have[path] || have[path].version !== want.version) return false;
	}
	try {
		// The one compiled package: a file built for another Node or machine does not load.
		const Database = createRequire(join(root, "packages/shop/package.json"))("better-sqlite3");
		new Database(":memory:").close();
		return true;
	} catch {
		return false;
	}
}

/**
 * Installs the packages when the stamp in node_modules does not fit the lock file, Node's ABI and the machine.
 *
 * @param {string} root
 * @param {{ quiet: boolean, tell: (sentence: string) => void }} options
 */
export function install(root, { quiet, tell }) {
	const stamp = join(root, "node_modules/.prepared");
	const wanted = createHash("sha256")
		.update(readFileSync(join(root, "package-lock.json")))
		.update(`\0${process.versions.modules} ${process.platform} ${process.arch}`)
		.digest("hex");
	if (readStamp(stamp) === wanted) return;
	if (!installedByHand(root)) {
		tell("Installing the packages. The first time this takes one to two minutes.");
		// Level 1 halves the time to compile the database and costs it no measurable speed.
		const env = { ...process.env, CFLAGS: process.env.CFLAGS ?? "-O1", npm_config_loglevel: "warn" };
		const npm = process.env.npm_execpath;
		const args = ["ci", "--include=dev"];
		const { ok, output } = npm?.endsWith("npm-cli.js")
			? run(root, process.execPath, [npm, ...args], { quiet, env })
			: run(root, "npm", args, { quiet, env });
		if (!ok) throw new PrepareError(`${output}\n${installFailure(output)}`);
	}
	writeStamp(stamp, wanted);
}

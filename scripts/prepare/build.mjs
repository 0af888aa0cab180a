import { existsSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { join } from "node:path";
import { filesUnder, fingerprint, readStamp, writeStamp } from "./files.mjs";
import { PrepareError, run } from "./run.mjs";

const CONFIGS = ["package-lock.json", "tsconfig.base.json", "tsconfig.json"];

/** @param {string} name */
const isSource = (name) => !/\.(test|test-helper)\.tsx?$/.test(name);

/**
 * The packages, each with the other packages it stands on.
 *
 * @param {string} root
 * @returns {Map<string, string[]>} folder name under packages/ to all folder names it needs, itself first
 */
function packageNeeds(root) {
	/** @type {Map<string, string[]>} */
	const direct = new Map();
	for (const name of readdirSync(join(root, "packages")).sort()) {
		const file = join(root, "packages", name, "package.json");
		if (!existsSync(file)) continue;
		const needs = Object.keys(JSON.parse(readFileSync(file, "utf8")).dependencies ?? {});
		direct.set(
			name,
			needs.filter((need) => need.startsWith("@loomwright/")).map((need) => need.slice(12)),
		);
	}
	const all = new Map();
	for (const name of direct.keys()) {
		const reached = new Set([name]);
		for (const one of reached) for (const need of direct.get(one) ?? []) reached.add(need);
		all.set(name, [...reached]);
	}
	return all;
}

/**
 * Deletes compiled files whose source is gone, so that nothing runs that is no longer there.
 *
 * @param {string} folder a package folder
 */
function dropOrphans(folder) {
	for (const file of filesUnder(join(folder, "dist"))) {
		const source = file.replace(`${join(folder, "dist")}`, join(folder, "src"));
		const stem = source.replace(/\.(d\.ts|js|js\.map|d\.ts\.map)$/, "");
		if (stem !== source && !existsSync(`${stem}.ts`) && !existsSync(`${stem}.tsx`)) rmSync(file);
	}
}

/**
 * Builds the TypeScript packages and the web app, each only when its sources, or those it stands on, changed.
 *
 * @param {string} root
 * @param {{ quiet: boolean, tell: (sentence: string) => void }} options
 */
export function build(root, { quiet, tell }) {
	const needs = packageNeeds(root);
	const bin = join(root, "node_modules/.bin");

	/** @type {{ path: string }[]} */
	const references = JSON.parse(readFileSync(join(root, "tsconfig.json"), "utf8")).references;
	const compiled = references.map(({ path }) => path).filter((path) => existsSync(join(root, path)));
	step({
		stamp: join(root, "node_modules/.built"),
		sources: [...CONFIGS, ...compiled.flatMap(inputs)],
		present: compiled.every((path) => existsSync(join(root, path, "dist"))),
		sentence: "Compiling the packages.",
		work: () => {
			for (const path of compiled) dropOrphans(join(root, path));
			return run(root, join(bin, "tsc"), ["-b", "tsconfig.json"], { quiet });
		},
		failure: "The packages do not compile. Mend what the compiler names above.",
	});

	const web = join(root, "packages/web");
	if (!existsSync(join(web, "index.html"))) return;
	step({
		stamp: join(root, "node_modules/.built-web"),
		sources: [...CONFIGS, ...(needs.get("web") ?? []).flatMap((name) => inputs(`packages/${name}`))],
		present: existsSync(join(web, "dist/index.html")),
		sentence: "Building the tablet app.",
		work: () => run(root, join(bin, "vite"), ["build", "packages/web", "--logLevel", "warn"], { quiet }),
		failure: "The tablet app does not build. Mend what is named above.",
	});

	/** @param {{ stamp: string, sources: string[], present: boolean, sentence: string, work: () => { ok: boolean, output: string }, failure: string }} one */
	function step({ stamp, sources, present, sentence, work, failure }) {
		// Taken before the work: a file saved meanwhile is built the next time.
		const wanted = fingerprint(root, sources, isSource);
		if (present && readStamp(stamp) === wanted) return;
		tell(sentence);
		const { ok, output } = work();
		if (!ok) throw new PrepareError(`${output}\n${failure}`);
		writeStamp(stamp, wanted);
	}
}

/** @param {string} path a package folder, relative to the root */
const inputs = (path) =>
	["src", "public", "index.html", "vite.config.ts", "tsconfig.json", "package.json"].map(
		(name) => `${path}/${name}`,
	);

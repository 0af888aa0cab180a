import { spawnSync } from "node:child_process";
import {
	chmodSync,
	cpSync,
	existsSync,
	mkdirSync,
	mkdtempSync,
	readFileSync,
	rmSync,
	writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, resolve } from "node:path";
import { afterEach, beforeEach, expect, test } from "vitest";

/** A tree of one package whose npm and compiler only write down that they were called. */
let tree: string;

const put = (path: string, text: string): void => {
	mkdirSync(dirname(join(tree, path)), { recursive: true });
	writeFileSync(join(tree, path), text);
};

const calls = (): string[] =>
	existsSync(join(tree, "calls")) ? readFileSync(join(tree, "calls"), "utf8").trim().split("\n") : [];

/** Compiler: writes the output of the one package. Fails when the source says so. */
const TSC = `#!/bin/sh
echo tsc >> calls
echo "compiler speaking"
grep -q broken packages/one/src/a.ts && exit 1
mkdir -p packages/one/dist && : > packages/one/dist/a.js
`;
const NPM = `#!/bin/sh
echo "npm $*" >> calls
[ -e npm-fails ] && { cat npm-fails >&2; exit 1; }
mkdir -p node_modules/.bin && cp tsc-stub node_modules/.bin/tsc && chmod +x node_modules/.bin/tsc
`;

const prepare = (...args: string[]) => {
	const env: NodeJS.ProcessEnv = { ...process.env, PATH: `${join(tree, "bin")}:${process.env.PATH}` };
	delete env.npm_execpath;
	return spawnSync(process.execPath, [join(tree, "scripts/prepare.mjs"), ...args], {
		cwd: tmpdir(),
		env,
		encoding: "utf8",
	});
};

beforeEach(() => {
	tree = mkdtempSync(join(tmpdir(), "prepare-"));
	cpSync(resolve(import.meta.dirname, "prepare.mjs"), join(tree, "scripts/prepare.mjs"));
	cpSync(resolve(import.meta.dirname, "prepare"), join(tree, "scripts/prepare"), { recursive: true });
	put("package.json", '{ "type": "module" }');
	put("package-lock.json", '{ "packages": { "node_modules/x": { "version": "1.0.0" } } }');
	put("tsconfig.json", '{ "references": [{ "path": "packages/one" }] }');
	put("packages/one/package.json", '{ "name": "@loomwright/one" }');
	put("packages/one/src/a.ts", "export const a = 1;\n");
	put("tsc-stub", TSC);
	put("bin/npm", NPM);
	chmodSync(join(tree, "bin/npm"), 0o755);
});

afterEach(() => rmSync(tree, { recursive: true, force: true }));

test("a fresh clone installs and builds; the next run does nothing and says nothing", () => {
	const first = prepare("build");
	expect(first.stderr).toContain("Installing the packages.");
	expect(first.stderr).toContain("Compiling the packages.");
	expect(first).toMatchObject({ status: 0, stdout: "" });
	expect(calls()).toEqual(["npm ci --include=dev", "tsc"]);
	expect(prepare("build")).toMatchObject({ status: 0, stdout: "", stderr: "" });
	expect(calls()).toHaveLength(2);
});

test("a changed source builds, a changed test does not", () => {
	prepare("build");
	put("packages/one/src/a.test.ts", "// a test\n");
	prepare("build");
	expect(calls()).toEqual(["npm ci --include=dev", "tsc"]);
	put("packages/one/src/a.ts", "export const a = 2;\n");
	prepare("build");
	expect(calls()).toEqual(["npm ci --include=dev", "tsc", "tsc"]);
});

test("a changed lock file installs again", () => {
	prepare("build");
	put("package-lock.json", '{ "packages": { "node_modules/x": { "version": "1.0.1" } } }');
	prepare("build");
	expect(calls().filter((call) => call.startsWith("npm"))).toHaveLength(2);
});

test("output that is gone is built again", () => {
	prepare("build");
	rmSync(join(tree, "packages/one/dist"), { recursive: true });
	prepare("build");
	expect(calls().filter((call) => call === "tsc")).toHaveLength(2);
});

test("compiled files without a source are deleted before a build", () => {
	put("packages/one/dist/old.js", "");
	put("packages/one/dist/old.d.ts", "");
	prepare("build");
	expect(existsSync(join(tree, "packages/one/dist/old.js"))).toBe(false);
	expect(existsSync(join(tree, "packages/one/dist/old.d.ts"))).toBe(false);
	expect(existsSync(join(tree, "packages/one/dist/a.js"))).toBe(true);
});

test("quiet says nothing when all is well", () => {
	expect(prepare("build", "--quiet")).toMatchObject({ status: 0, stdout: "", stderr: "" });
});

test("a failing install says what to do, and is tried again", () => {
	put("npm-fails", "gyp ERR! find Python\n");
	const failed = prepare("build", "--quiet");
	expect(failed).toMatchObject({ status: 1, stdout: "" });
	expect(failed.stderr).toContain("gyp ERR! find Python");
	expect(failed.stderr).toContain("apt-get install build-essential python3");
	rmSync(join(tree, "npm-fails"));
	expect(prepare("build").status).toBe(0);
});

test("a failing build shows the compiler's words, and is tried again", () => {
	put("packages/one/src/a.ts", "broken\n");
	const failed = prepare("build", "--quiet");
	expect(failed).toMatchObject({ status: 1, stdout: "" });
	expect(failed.stderr).toContain("compiler speaking");
	expect(failed.stderr).toContain("The packages do not compile.");
	expect(prepare("build").status).toBe(1);
});

test("a lock left by a process that is gone is taken over", () => {
	const gone = spawnSync(process.execPath, ["--eval", ""]);
	put(".prepare.lock", String(gone.pid));
	expect(prepare("build").status).toBe(0);
	expect(existsSync(join(tree, ".prepare.lock"))).toBe(false);
});

test("an unknown word gives the usage", () => {
	expect(prepare("bild")).toMatchObject({ status: 1, stdout: "" });
	expect(prepare("build", "--loud").stderr).toContain("Usage: node scripts/prepare.mjs build [--quiet]");
});

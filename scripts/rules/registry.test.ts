import { expect, test } from "vitest";
import { textOf, treeFiles } from "./tree.js";

/** Hosts that hand out packages: any `registry.` or `npm.` host, and the usual mirrors. */
const HOST = /\b(?:registry|npm|repo|mirror|mirrors)\.[a-z0-9-]+\.(?:org|com|net|io|dev|cn)\b/i;

/** A folder of this tree, or a folder npm makes. */
const LOCAL = /^(?:packages|node_modules)\//;

const resolvedOf = (lock: string): string[] => {
	const { packages } = JSON.parse(lock) as { packages: Record<string, { resolved?: string }> };
	return Object.values(packages).flatMap(({ resolved }) => (resolved === undefined ? [] : [resolved]));
};

test("the lock file says what to install, never from which host", () => {
	const resolved = resolvedOf(textOf("package-lock.json"));
	expect(resolved.length).toBeGreaterThan(0);
	expect(resolved.filter((place) => !LOCAL.test(place))).toEqual([]);
});

test("every package in the lock file is pinned by its checksum", () => {
	const { packages } = JSON.parse(textOf("package-lock.json")) as {
		packages: Record<string, { integrity?: string; inBundle?: boolean }>;
	};
	const loose = Object.entries(packages)
		.filter(([path, { integrity, inBundle }]) => path.startsWith("node_modules/") && !integrity && !inBundle)
		.map(([path]) => path)
		.filter((path) => !path.startsWith("node_modules/@loomwright/"));
	expect(loose).toEqual([]);
});

test("no file of the tree names a package registry", () => {
	const named = treeFiles()
		.filter((path) => !/\.(?:png|jpg|ico|pdf|woff2?|ttf)$/.test(path))
		.filter((path) => HOST.test(textOf(path)));
	expect(named).toEqual([]);
});

test("a registry host would be seen", () => {
	expect(HOST.test(`"resolved": "https://${["registry", "example", "org"].join(".")}/a.tgz"`)).toBe(true);
	expect(resolvedOf('{"packages":{"node_modules/a":{"resolved":"https://x/a.tgz"}}}')).toEqual([
		"https://x/a.tgz",
	]);
});

import { describe, expect, test } from "vitest";
import { layerProblems } from "./layers.js";
import { packageSources } from "./tree.js";

const at = (path: string, text: string): string[] => layerProblems([{ path: `packages/${path}`, text }]);

test("the tree keeps the layers", () => {
	const files = packageSources();
	expect(files.length).toBeGreaterThan(10);
	expect(layerProblems(files)).toEqual([]);
});

describe("a planted breach is found", () => {
	test.each([
		["a later room", "engine/src/loom/a.ts", 'import { x } from "../circuit/x.js";'],
		["a later room by re-export", "engine/src/units/a.ts", 'export * from "../tables/x.js";'],
		["a later room, type only", "engine/src/loom/a.ts", 'import type { X } from "../circuit/x.js";'],
		["a later room by import type", "engine/src/loom/a.ts", 'let x: import("../circuit/x.js").X;'],
		["a later room, dynamic", "engine/src/loom/a.ts", 'await import("../circuit/x.js");'],
		["a room at its side", "engine/src/rules/a.ts", 'import { x } from "../faults/x.js";'],
		["the other room at its side", "engine/src/find/a.ts", 'import { x } from "../prove/x.js";'],
		["a file above the rooms", "engine/src/find/a.ts", 'import { x } from "../index.js";'],
		["from a folder inside a room", "engine/src/loom/b/a.ts", 'import { x } from "../../days/x.js";'],
		["an unknown room", "engine/src/attic/a.ts", "export const a = 1;"],
		["an unknown package", "attic/src/a.ts", "export const a = 1;"],
		["a package above", "linalg/src/a.ts", 'import { x } from "@loomwright/engine";'],
		["a shell", "engine/src/days/a.ts", 'import { x } from "@loomwright/shop";'],
		["code of the server in the app", "web/src/a.tsx", 'import { x } from "@loomwright/shop";'],
		["another package by path", "shop/src/a.ts", 'import { x } from "../../engine/src/index.js";'],
		["Node", "engine/src/loom/a.ts", 'import { readFileSync } from "node:fs";'],
		["the clock", "engine/src/loom/a.ts", "export const a = Date.now();"],
		["the clock, made new", "engine/src/loom/a.ts", "export const a = new Date();"],
		["the timer", "linalg/src/a.ts", "export const a = performance.now();"],
		["chance", "linalg/src/a.ts", "export const a = () => Math.random();"],
		["chance as a value", "linalg/src/a.ts", "export const a = Math.random;"],
		["the process", "engine/src/loom/a.ts", "export const a = process.env;"],
		["the network", "engine/src/loom/a.ts", 'export const a = fetch("x");'],
		["a host name in an object", "engine/src/loom/a.ts", "export const a = { fetch };"],
	])("%s", (_, path, text) => {
		expect(at(path, text)).toHaveLength(1);
	});

	test("with its place and what is wrong", () => {
		expect(at("engine/src/loom/a.ts", '\nimport { x } from "../circuit/x.js";')).toEqual([
			"packages/engine/src/loom/a.ts:2: room loom imports room circuit, which does not stand before it",
		]);
	});
});

describe("what is allowed passes", () => {
	test.each([
		["an earlier room", "engine/src/find/a.ts", 'import { x } from "../faults/x.js";'],
		["its own room", "engine/src/loom/b/a.ts", 'import { x } from "../x.js";'],
		["a file above the rooms", "engine/src/car.ts", 'import { x } from "./days/x.js";'],
		["a package before", "engine/src/circuit/a.ts", 'import { x } from "@loomwright/linalg";'],
		["a library", "engine/src/tables/a.ts", 'import { z } from "zod";'],
		["Node in a shell", "shop/src/a.ts", 'import "node:fs"; export const a = Date.now();'],
		["types of the server in the app", "web/src/a.tsx", 'import type { X } from "@loomwright/shop";'],
		["a test", "engine/src/units/a.test.ts", 'import { x } from "../days/x.js"; Math.random();'],
		[
			"a property of that name",
			"engine/src/loom/a.ts",
			"export const a = (b: any) => ({ process: b.performance });",
		],
		[
			"the words in a comment",
			"engine/src/loom/a.ts",
			'/** no Math.random, no new Date() */ const a = "fetch(";',
		],
	])("%s", (_, path, text) => {
		expect(at(path, text)).toEqual([]);
	});
});

import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { openCar, proveSheet } from "@loomwright/engine";
import { expect, test } from "vitest";
import { readFolder } from "../folder/read-folder.js";
import { temporaryFolder } from "../store/temporary.test-helper.js";
import { KeptFolder } from "./folder.js";
import { keptSheet } from "./sheet.js";

const { tables } = readFolder(new URL("../../../../demo/small", import.meta.url).pathname);
const car = openCar(tables);
const options = { leastOhms: 1 };

test("the sheet as computed, the second time out of its file", () => {
	const kept = new KeptFolder(temporaryFolder());
	const sheet = proveSheet(car, options);
	expect(keptSheet(car, tables, options, kept)).toEqual(sheet);
	expect(readdirSync(kept.folder)).toHaveLength(1);
	// A car that cannot be proved: only a kept sheet can answer.
	const none = undefined as unknown as typeof car;
	expect(keptSheet(none, tables, options, kept)).toEqual(sheet);
	expect(() => keptSheet(none, { ...tables, "wires.csv": "" }, options, kept)).toThrow();
	expect(() => keptSheet(none, tables, { leastOhms: 2 }, kept)).toThrow();
	expect(() => keptSheet(none, tables, options, undefined)).toThrow();
});

test("a damaged file is computed anew and mended", () => {
	const kept = new KeptFolder(temporaryFolder());
	keptSheet(car, tables, options, kept);
	const file = join(kept.folder, readdirSync(kept.folder)[0]!);
	const whole = readFileSync(file);
	writeFileSync(file, whole.subarray(0, whole.length - 9));
	expect(keptSheet(car, tables, options, kept).readings).toBeGreaterThan(0);
	expect(readFileSync(file).equals(whole)).toBe(true);
});

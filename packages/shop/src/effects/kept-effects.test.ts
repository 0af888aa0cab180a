import { mkdtempSync, readdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { Finder, openCar } from "@loomwright/engine";
import { afterEach, beforeEach, expect, it } from "vitest";
import { readFolder } from "../folder/read-folder.js";
import { keepEffects, readEffects } from "./kept-effects.js";

const demo = resolve(import.meta.dirname, "../../../../demo/small");
const car = openCar(readFolder(demo).tables);
const finder = () => new Finder(car, "converted");

let folder: string;
beforeEach(() => {
	folder = mkdtempSync(join(tmpdir(), "effects-"));
});
afterEach(() => {
	rmSync(folder, { recursive: true, force: true });
});
const file = () => join(folder, readdirSync(folder)[0]!);

it("found the first time, kept the second, one whole file", () => {
	expect(keepEffects(finder(), folder)).toBe("found");
	expect(readdirSync(folder)).toHaveLength(1);
	expect(keepEffects(finder(), folder)).toBe("kept");
	expect(readdirSync(folder)).toHaveLength(1);
});

it("a folder that is not there yet", () => {
	expect(readEffects(join(folder, "none"), "0")).toBeUndefined();
	expect(keepEffects(finder(), join(folder, "deep", "down"))).toBe("found");
});

it("a damaged file is as none, and is mended", () => {
	keepEffects(finder(), folder);
	const whole = readFileSync(file());
	const damage = [
		() => truncateSync(file(), whole.length >> 1),
		() => writeFileSync(file(), ""),
		() =>
			writeFileSync(
				file(),
				whole.map((byte, k) => (k === 500 ? byte ^ 1 : byte)),
			),
	];
	for (const spoil of damage) {
		spoil();
		expect(readEffects(folder, finder().key)).toBeUndefined();
		expect(keepEffects(finder(), folder)).toBe("found");
		expect(readFileSync(file()).equals(whole)).toBe(true);
	}
});

it("a file under another car's name is not used", () => {
	const other = new Finder(car, "delivered");
	keepEffects(finder(), folder);
	writeFileSync(join(folder, `${other.key}.effects`), readFileSync(file()));
	expect(keepEffects(other, folder)).toBe("found");
});

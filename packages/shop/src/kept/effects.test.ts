/** What faults do, kept on disk: used the second time, and never in the way. */
import { mkdtempSync, readdirSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join, resolve } from "node:path";
import { Finder, openCar, parseEvidence } from "@loomwright/engine";
import { afterEach, beforeEach, expect, it } from "vitest";
import { readFolder } from "../folder/read-folder.js";
import { keepEffects, useKept } from "./effects.js";
import { KeptFolder } from "./folder.js";

const demo = resolve(import.meta.dirname, "../../../../demo/small");
const car = openCar(readFolder(demo).tables);
const finder = () => new Finder(car, "converted");

let folder: string;
let kept: KeptFolder;
beforeEach(() => {
	folder = mkdtempSync(join(tmpdir(), "effects-"));
	kept = new KeptFolder(folder);
});
afterEach(() => {
	rmSync(folder, { recursive: true, force: true });
});

it("found the first time, kept the second, one whole file", () => {
	expect(useKept(finder(), kept)).toBe(false);
	expect(keepEffects(finder(), kept)).toBe("found");
	expect(readdirSync(folder)).toHaveLength(1);
	expect(keepEffects(finder(), kept)).toBe("kept");
	expect(readdirSync(folder)).toHaveLength(1);
});

it("ranks with them as without", () => {
	const evidence = parseEvidence(JSON.stringify({ occasions: [{ codes: ["B1A02"] }] }), "");
	const own = finder().find(evidence);
	keepEffects(finder(), kept);
	const given = finder();
	expect(useKept(given, kept)).toBe(true);
	const theirs = given.find(evidence);
	expect(theirs.faults.map(({ id }) => id)).toEqual(own.faults.map(({ id }) => id));
	theirs.faults.forEach(({ posterior }, k) => {
		expect(posterior).toBeCloseTo(own.faults[k]!.posterior, 4);
	});
});

it("a file under another car's name is not used", () => {
	const other = new Finder(car, "delivered");
	keepEffects(finder(), kept);
	const [name] = readdirSync(folder).map((file) => file.replace(/\.kept$/, ""));
	const bytes = kept.read(name!)!;
	kept.write(name!.replace(finder().key, other.key), bytes);
	expect(useKept(other, kept)).toBe(false);
	expect(keepEffects(other, kept)).toBe("found");
});

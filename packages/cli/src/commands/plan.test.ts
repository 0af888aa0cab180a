import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { openCar } from "@loomwright/engine";
import { planSchema, readFolder } from "@loomwright/shop";
import { expect, onTestFinished, test } from "vitest";
import { SMALL_CAR, said } from "../terminal.test-helper.js";

const TARGETS = `target,want,title,part,from,to,size
k1,remove,the lamp relay goes,K1,,,
s-wrk,fit,a switch takes its place,S-WRK,,,
feed,,feed of the switch,,S-WRK.1,permanent feed,1.5
lamps,,work lamps by the switch,,S-WRK.2,function work-lamps,1.5
`;

/** The small car with what is wanted of it, in a folder of its own that is gone after the test. */
function folderWith(targets: string | undefined): string {
	const folder = mkdtempSync(join(tmpdir(), "loomwright-"));
	onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
	for (const [name, text] of Object.entries(readFolder(SMALL_CAR).tables))
		writeFileSync(join(folder, name), text);
	if (targets !== undefined) writeFileSync(join(folder, "targets.csv"), targets);
	return folder;
}

test("the proposal as text: each circuit with its second best, the alternatives, the steps", async () => {
	const { code, out, err } = await said(["plan", folderWith(TARGETS)]);
	expect([code, err]).toEqual([0, ""]);
	expect(out).toContain("No other choice of these costs less.");
	expect(out).toMatch(/^feed +extend +S-WRK\.1 to the bare end of W4 +\d+ +join: S-WRK\.1 to SP1 +\d+\.\d$/m);
	expect(out).toMatch(/^overlay loom +\d+ +\d+$/m);
	expect(out).toMatch(/^04 +extend +work lamps by the switch: W10a extended to S-WRK\.2 +dash$/m);
});

test("as JSON, and written as tables that open", async () => {
	const folder = folderWith(TARGETS);
	const { code, out } = await said(["plan", folder, "--out", folder, "--json"]);
	const { possible, choices, files } = planSchema.strict().parse(JSON.parse(out));
	expect([code, possible, choices.map(({ way }) => way)]).toEqual([0, true, ["extend", "extend"]]);
	expect(readFileSync(join(folder, "recipe.csv"), "utf8")).toBe(files["recipe.csv"]);
	const car = openCar(readFolder(folder).tables);
	expect([car.misfits, car.converted.parts.has("K1")]).toEqual([[], false]);
});

test("no targets.csv, and mistakes in it: exit code 2, nothing proposed", async () => {
	const none = await said(["plan", folderWith(undefined)]);
	expect([none.code, none.out]).toEqual([2, ""]);
	expect(none.err).toContain("targets.csv: the table is missing");
	const wrong = await said(["plan", folderWith(TARGETS.replace("S-WRK.1", "S-WRK.9")), "--json"]);
	expect([wrong.code, JSON.parse(wrong.out)]).toEqual([
		2,
		{ errors: [expect.objectContaining({ file: "targets.csv", row: 4, column: "from" })] },
	]);
});

test("a circuit that cannot be made: named, exit code 1, nothing written", async () => {
	const folder = folderWith(TARGETS.replace("permanent feed,1.5", "permanent feed,25"));
	const before = readFileSync(join(folder, "recipe.csv"), "utf8");
	const { code, out } = await said(["plan", folder, "--out", folder]);
	expect(code).toBe(1);
	expect(out).toMatch(/one circuit cannot be made\.\n\n {2}feed +no way was found/);
	expect(readFileSync(join(folder, "recipe.csv"), "utf8")).toBe(before);
});

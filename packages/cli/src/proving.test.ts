/** The commands of proving: the sheet before power, what was read on it, and the staged power-up. */
import { mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parseEvidence } from "@loomwright/engine";
import { errorsSchema, type ProveAnswer, powerSchema, proveSchema, readingSchema } from "@loomwright/shop";
import { beforeAll, describe, expect, onTestFinished, test } from "vitest";
import { SMALL_CAR, said } from "./terminal.test-helper.js";

let sheet: ProveAnswer;
const rows = () => sheet.parts.flatMap((part) => part.rows);

beforeAll(async () => {
	const { out } = await said(["prove", SMALL_CAR, "--json"]);
	sheet = proveSchema.strict().parse(JSON.parse(out));
});

/** A file of what was read, gone after the test. */
function entriesFile(text: string): string {
	const folder = mkdtempSync(join(tmpdir(), "loomwright-"));
	onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
	const file = join(folder, "read.csv");
	writeFileSync(file, text);
	return file;
}

/** Every row as a sound car reads, but for those changed. */
const table = (changed: (row: ReturnType<typeof rows>[number]) => number | string | undefined) =>
	`row,value\n${rows()
		.map((row) => `${row.number},${changed(row) ?? row.value ?? "open"}`)
		.join("\n")}\n`;

describe("prove", () => {
	test("the sheet is ordered and as small as can be; what it cannot show has a reason", () => {
		const { readings, lowerBound, coverage, missed, judged, evidence, found } = sheet;
		expect(rows().map(({ number }) => number)).toEqual(Array.from({ length: readings }, (_, k) => k + 1));
		expect([lowerBound, coverage.caught]).toEqual([readings, coverage.detectable]);
		expect(missed.every(({ why }) => why !== "")).toBe(true);
		expect([judged, evidence, found]).toEqual([[], null, null]);
	});

	test("as text: places, limits, coverage and misses; cautions are said once", async () => {
		const { code, out } = await said(["prove", SMALL_CAR], { columns: 140 });
		expect(code).toBe(0);
		const { faults, caught } = sheet.coverage;
		expect(out).toContain(`${faults} single faults considered`);
		expect(out).toContain(`this sheet ${caught} (100 %)`);
		// A lever of 5000 ohm whose slider rests at a tenth (demo/small): 500 ohm, with tolerance and meter.
		const [, low, high] = /CU\.4 lever signal.* {2}(\S+) ohm to (\S+) ohm$/m.exec(out)!;
		expect([Number(low) < 500, Number(high) > 500]).toEqual([true, true]);
		expect(out).toMatch(/^ {2}\d+ {2}only shows under power$/m);
		for (const caution of sheet.parts[0]!.cautions) expect(out.split(caution.slice(0, 40)).length).toBe(2);
	});

	test("kept, it is not computed again, and is the same", async () => {
		const kept = mkdtempSync(join(tmpdir(), "loomwright-"));
		onTestFinished(() => rmSync(kept, { recursive: true, force: true }));
		for (let times = 0; times < 2; times++) {
			const { out } = await said(["prove", SMALL_CAR, "--json"], { kept });
			expect(JSON.parse(out)).toEqual(sheet);
			expect(readdirSync(kept)).toHaveLength(1);
		}
	});

	test("a poor connection may be asked for from other ohms on", async () => {
		const { out } = await said(["prove", SMALL_CAR, "--least-ohms", "50", "--json"]);
		const coarse = proveSchema.parse(JSON.parse(out));
		expect(coarse.leastOhms).toBe(50);
		expect(coarse.coverage.detectable).toBeGreaterThanOrEqual(sheet.coverage.detectable);
	});

	test("a sound car passes: exit code 0, nothing is looked for", async () => {
		const file = entriesFile(table(() => undefined));
		const { code, out } = await said(["prove", SMALL_CAR, "--entries", file]);
		expect([code, out]).toEqual([
			0,
			`A tiny car: ${sheet.readings} of ${sheet.readings} readings taken, all right.\n`,
		]);
	});

	test("a blown fuse: what it opens fails, and the fuse is found from the readings", async () => {
		// Readings that pass to the control unit's supply pin go through F2 and read open without it.
		const through = (row: ReturnType<typeof rows>[number]) =>
			row.catches.includes("fuse blown:F2") ? "open" : undefined;
		const file = entriesFile(table(through));
		const { code, out } = await said(["prove", SMALL_CAR, "--entries", file, "--json"]);
		const { judged, evidence, found } = proveSchema.strict().parse(JSON.parse(out));
		const wrong = judged.filter(({ passes }) => !passes).map(({ row }) => row);
		expect(code).toBe(1);
		expect(wrong).toEqual(rows().flatMap((row) => (through(row) ? [row.number] : [])));
		expect(found!.faults.slice(0, 2).map(({ id }) => id)).toContain("fuse blown:F2");
		expect(parseEvidence(JSON.stringify(evidence), "evidence").occasions.length).toBe(sheet.parts.length);
		const text = await said(["prove", SMALL_CAR, "--entries", file]);
		expect(text.out).toMatch(/^row \d+\n {2}between {2}.*\n(.*\n)* {2}shows {4}open: not right, wanted /m);
		expect(text.out).toContain("control unit fuse (F2)");
	});

	test("values with a prefix, a decimal comma, and rows in any order", async () => {
		const file = entriesFile("row;value\n6;0,5 k\n4;open\n5;3 M\n");
		const { out } = await said(["prove", SMALL_CAR, "--entries", file, "--json"]);
		const { judged } = proveSchema.parse(JSON.parse(out));
		expect(judged.map(({ row, value }) => [row, value])).toEqual([
			[6, 500],
			[4, "open"],
			[5, 3e6],
		]);
	});

	test("a row that stands there again was read once more, on another occasion", async () => {
		const { number, value } = rows().find((row) => row.value !== null)!;
		const wrong = `row,value\n${number},open\n`;
		const first = await said(["prove", SMALL_CAR, "--entries", entriesFile(wrong)]);
		expect([first.code, first.out.replace(/\s+/g, " ")]).toEqual([
			1,
			expect.stringContaining("do Once more: Ohms"),
		]);
		const right = entriesFile(`${wrong}${number},${value}\n`);
		const { out } = await said(["prove", SMALL_CAR, "--entries", right, "--json"]);
		const { judged, evidence, found } = proveSchema.parse(JSON.parse(out));
		expect([judged.map(({ passes }) => passes), found]).toEqual([[false, true], null]);
		expect(evidence!.occasions.map(({ readings }) => readings.length)).toEqual([1, 1]);
		expect((await said(["prove", SMALL_CAR, "--entries", right])).out).toContain("1 of");
	});

	test("entries that cannot be: every one told, with its row and column", async () => {
		const file = entriesFile("row,value\n99,1\n1,-3\n1,0.1\n2,much\n");
		const { code, out, err } = await said(["prove", SMALL_CAR, "--entries", file, "--json"]);
		const { errors } = errorsSchema.strict().parse(JSON.parse(out));
		expect(code).toBe(2);
		expect(errors.map(({ row, column, problem }) => [row, column, problem])).toEqual([
			[2, "row", 'the sheet has no row "99"'],
			[3, "value", '"-3" is no reading'],
			[5, "value", '"much" is no reading'],
		]);
		expect(err).toContain(`${file}, row 2, column row`);
	});

	test.each(["0", "-1", "some"])("--least-ohms %s: exit code 2", async (ohms) => {
		const { code, err } = await said(["prove", SMALL_CAR, "--least-ohms", ohms]);
		expect([code, err]).toEqual([2, expect.stringMatching(/Ohms above 0/)]);
	});
});

describe("a condition said in place", () => {
	const ask = (when: string) =>
		said(["reading", SMALL_CAR, "K1.86", "CU.1", "--what", "ohms", "--when", when, "--json"]);

	test("reads as the row of the sheet does", async () => {
		const row = rows().find(({ question }) => question.from === "K1.86" && question.to === "CU.1")!;
		const { code, out } = await ask(row.question.when);
		const { value, low, high } = readingSchema.parse(JSON.parse(out));
		expect(code).toBe(0);
		expect([value, low, high].map((ohms) => ohms!.toFixed(9))).toEqual(
			[row.value, row.low, row.high].map((ohms) => ohms!.toFixed(9)),
		);
	});

	test("with a name or state that this car has not: exit code 2, and what is wrong", async () => {
		const { code, err } = await ask("BAT=off; X-CU=ajar");
		expect([code, err]).toEqual([2, expect.stringMatching(/'ajar' is no state of X-CU/)]);
	});
});

describe("power", () => {
	test("stages in order, each with what to connect and what must be true", async () => {
		const { code, out } = await said(["power", SMALL_CAR, "--json"]);
		const { stages } = powerSchema.strict().parse(JSON.parse(out));
		expect([code, stages.map(({ number }) => number)]).toEqual([0, [...stages.keys()]]);
		expect(stages.slice(0, 3).map(({ kind }) => kind)).toEqual(["before power", "test lamp", "battery"]);
		for (const { connect, mustBeTrue } of stages)
			expect(connect.length * mustBeTrue.length).toBeGreaterThan(0);
	});

	test("as text: cautions before what is done, then what is read", async () => {
		const { out } = await said(["power", SMALL_CAR], { columns: 160 });
		expect(out).toMatch(
			/^1 {2}battery through a test lamp.*\n {2}caution .*\n {2}do .*\n {2}do .*\n {2}read {5}12\.\d+ V to 12\.\d+ V \(volts\) from BAT\.\+/m,
		);
		expect(out).toMatch(/^ {2}read {5}100 mA or less, either way \(amperes\)/m);
		expect(out).toMatch(/^ {2}true {5}No relay moves\.$/m);
	});
});

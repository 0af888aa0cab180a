import { once } from "node:events";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { type AddressInfo, createServer } from "node:net";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parseEvidence } from "@loomwright/engine";
import {
	compareSchema,
	errorsSchema,
	findSchema,
	readFolder,
	readingSchema,
	readText,
	rulesSchema,
	sizeSchema,
	whatIfSchema,
} from "@loomwright/shop";
import { describe, expect, onTestFinished, test } from "vitest";
import { ROOT, SMALL_CAR, said } from "./terminal.test-helper.js";

/** A folder of its own with these files, gone after the test. */
function folderWith(files: Readonly<Record<string, string>>): string {
	const folder = mkdtempSync(join(tmpdir(), "loomwright-"));
	onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
	for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
	return folder;
}

const small = () => readFolder(SMALL_CAR).tables;

const EVIDENCE = JSON.stringify({
	title: "Cold motor",
	occasions: [
		{ codes: ["B1A02"], readings: [{ what: "volts", from: "CU.7", to: "CU.2", when: "key-on", value: 5 }] },
	],
});

describe("compare", () => {
	test("lists the changes by connector, with units", async () => {
		const { code, out, err } = await said(["compare", SMALL_CAR]);
		expect([code, err]).toEqual([0, ""]);
		expect(out).toMatch(/^A tiny car: \d+ changes\n/);
		expect(out).toMatch(
			/E-R\.2 +leads elsewhere +W14 BN 1 mm2 to G2 \(0\.6 m\) +W14 BN 1 mm2 to G3 \(0\.6 m\)/,
		);
		expect(out).toContain("switch S-WRK (work lamp switch) is fitted");
	});

	test("as JSON", async () => {
		const { code, out } = await said(["compare", SMALL_CAR, "--json"]);
		const { changes, misfits } = compareSchema.strict().parse(JSON.parse(out));
		expect([code, misfits]).toEqual([0, []]);
		expect(changes.map((change) => change.kind)).toContain("part fitted");
	});

	test("a recipe step that does not fit: told with row and column, exit code 1", async () => {
		const recipe = small()["recipe.csv"]!;
		const folder = folderWith({ ...small(), "recipe.csv": recipe.replaceAll("W10a", "W10x") });
		const text = await said(["compare", folder]);
		expect([text.code, text.err]).toEqual([1, expect.stringMatching(/not fit this car/)]);
		const { code, out } = await said(["compare", folder, "--json"]);
		const { misfits } = compareSchema.parse(JSON.parse(out));
		expect([code, misfits[0]]).toEqual([
			1,
			expect.objectContaining({ row: expect.any(Number), column: "wire" }),
		]);
	});
});

describe("rules", () => {
	test("of either loom; the sound car passes", async () => {
		const { code, out } = await said(["rules", SMALL_CAR, "--recipe", "none", "--json"]);
		const { of, findings } = rulesSchema.strict().parse(JSON.parse(out));
		expect([of, findings.filter((finding) => finding.severity !== "note"), code]).toEqual([
			"delivered",
			[],
			0,
		]);
		expect((await said(["rules", SMALL_CAR])).out).toContain("loom as converted");
	});

	test("a finding to mend: where, why and mend as text, exit code 1", async () => {
		const folder = folderWith(groundedReturn());
		const { code, out } = await said(["rules", folder]);
		expect(code).toBe(1);
		expect(out).toMatch(/^(STOP|WARN) {2}sensor-return$/m);
		for (const name of ["where", "why", "mend"]) expect(out).toMatch(new RegExp(`^ {2}${name} +\\S`, "m"));
		const { findings } = rulesSchema.parse(JSON.parse((await said(["rules", folder, "--json"])).out));
		expect(findings[0]!.mend).not.toBe("");
	});
});

/** The small car with its sensors' return taken to the lamps' ground point instead of the unit. */
function groundedReturn(): Record<string, string> {
	const tables = small();
	return { ...tables, "wires.csv": tables["wires.csv"]!.replace("W19,CU.5,SP4", "W19,G2,SP4") };
}

describe("size", () => {
	test("what the recipe makes and works on, with its terminals and splices", async () => {
		const { code, out, err } = await said(["size", SMALL_CAR]);
		expect([code, err]).toEqual([0, ""]);
		expect(out).toMatch(/^A tiny car, loom as converted: every size does\n/);
		expect(out).toMatch(/Ends\nwire +at +terminal/);
		const all = await said(["size", SMALL_CAR, "--all"]);
		expect(all.out.length).toBeGreaterThan(out.length);
	});

	test("as JSON, of either loom", async () => {
		const { code, out } = await said(["size", SMALL_CAR, "--recipe", "none", "--json"]);
		const { of, wires, fuses, splices } = sizeSchema.strict().parse(JSON.parse(out));
		expect([of, code, splices.some((splice) => splice.worked)]).toEqual(["delivered", 0, false]);
		expect(wires.every((wire) => wire.suffices)).toBe(true);
		expect(fuses.every((fuse) => fuse.wires.includes(fuse.thinnest))).toBe(true);
	});

	test("a wire too thin for its fuse: told, exit code 1", async () => {
		const thin = small()["wires.csv"]!.replace(/^(W3,[^,]*,[^,]*),[^,]*,/m, "$1,0.22,");
		const { code, out } = await said(["size", folderWith({ ...small(), "wires.csv": thin })]);
		expect(code).toBe(1);
		expect(out).toMatch(/Wire W3, 0\.22\smm2/);
	});
});

describe("what-if", () => {
	const thinner = ["--set", "wires", "W3", "size", "0.22"];

	test("what a thinner wire would do", async () => {
		const { code, out, err } = await said(["what-if", SMALL_CAR, ...thinner]);
		expect([code, err]).toEqual([1, ""]);
		expect(out).toMatch(/STOP fuse-too-large: F1/);
		expect(out).toMatch(/Wire W3 does, then does not do\./);
	});

	test("as JSON; the cell as it is moves nothing", async () => {
		const { out } = await said(["what-if", SMALL_CAR, ...thinner, "--json"]);
		const { findings, wires } = whatIfSchema.strict().parse(JSON.parse(out));
		expect(findings.come.map((finding) => finding.rule)).toContain("fuse-too-large");
		expect(wires).toMatchObject([{ id: "W3", before: { mm2: 1 }, after: { mm2: 0.22, suffices: false } }]);
		const same = await said(["what-if", SMALL_CAR, "--set", "wires.csv", "W3", "size", "1"]);
		expect([same.code, same.out]).toEqual([0, "A tiny car, loom as converted: nothing moves\n"]);
	});

	test.each([
		[["--set", "wires", "W3", "size"], "four: the table"],
		[["--set", "wires", "W3", "size", "1", "2"], "four: the table"],
		[[], "--set TABLE ROW COLUMN CELL, or --without STEP"],
		[["--without", "1", ...thinner], "--set TABLE ROW COLUMN CELL, or --without STEP"],
		[["--set", "wire", "W3", "size", "1"], "wires"],
		[["--set", "wires", "W99", "size", "1"], "there is no row"],
	])("%j is refused", async (words, wanted) => {
		const { code, err } = await said(["what-if", SMALL_CAR, ...words]);
		expect(code).toBe(2);
		expect(err).toContain(wanted);
	});
});

describe("reading", () => {
	const question = ["reading", SMALL_CAR, "CU.7", "CU.2", "--when", "key-on"];

	test("5 V x 2252 / (2252 + 2200) = 2.53 V, by hand in the car's README", async () => {
		const { code, out } = await said([...question, "--json"]);
		const answer = readingSchema.strict().parse(JSON.parse(out));
		expect([code, answer.unit, answer.open, answer.of]).toEqual([0, "V", false, "converted"]);
		expect(answer.value).toBeCloseTo(2.529, 2);
		expect((await said(question)).out).toMatch(
			/^2\.53 V {2}\(95 of 100 sound cars: 2\.\d+ V to 2\.\d+ V\)\nvolts from CU\.7/,
		);
	});

	test("open has no number", async () => {
		const words = ["reading", SMALL_CAR, "K1.30", "K1.87", "--what", "ohms", "--when", "battery-off"];
		const answer = readingSchema.parse(JSON.parse((await said([...words, "--json"])).out));
		expect(answer).toMatchObject({ open: true, value: null, low: null, high: null, unit: "ohm" });
		expect((await said(words)).out).toMatch(/^open\n/);
	});

	test("without a condition: the conditions there are", async () => {
		const { code, err } = await said(["reading", SMALL_CAR, "CU.7", "CU.2"]);
		expect([code, err]).toEqual([2, expect.stringMatching(/--when with one of: battery-off, key-on/)]);
	});

	test.each([
		[["reading", SMALL_CAR, "CU.77", "CU.2", "--when", "key-on"], /CU\.77/],
		[["reading", SMALL_CAR, "CU.7", "CU.2", "--when", "key"], /no condition 'key'.*key-on/],
		[["reading", SMALL_CAR, "CU.7", "CU.2", "--what", "ohms", "--when", "key-on"], /battery/],
	])("that cannot be taken: exit code 2", async (words, said_) => {
		const { code, err, out } = await said([...words, "--json"]);
		expect([code, err]).toEqual([2, expect.stringMatching(said_)]);
		expect(errorsSchema.strict().parse(JSON.parse(out)).errors.length).toBe(1);
	});
});

describe("find", () => {
	test("faults by chance, and the next step", async () => {
		const evidence = join(folderWith({ "e.json": EVIDENCE }), "e.json");
		const { code, out } = await said(["find", SMALL_CAR, "--evidence", evidence, "--json"]);
		const { faults, next, of } = findSchema.strict().parse(JSON.parse(out));
		expect([code, of]).toEqual([0, "converted"]);
		const chances = faults.map((fault) => fault.posterior);
		expect(chances).toEqual([...chances].sort((a, b) => b - a));
		const text = await said(["find", SMALL_CAR, "--evidence", evidence, "--top", "2"]);
		expect(text.out).toMatch(/^Cold motor, loom as converted\n/);
		expect(text.out).toMatch(/^ *2 +[\d.]+ % /m);
		expect(text.out).not.toMatch(/^ *3 +[\d.]+ % /m);
		expect(text.out.replace(/\s+/g, " ")).toContain(next!.text);
	});

	test("--recipe goes before what the file says", async () => {
		const evidence = join(folderWith({ "e.json": EVIDENCE }), "e.json");
		const { out } = await said(["find", SMALL_CAR, "--evidence", evidence, "--recipe", "none", "--json"]);
		expect(findSchema.parse(JSON.parse(out)).of).toBe("delivered");
	});

	test("--shop counts a shop's own repairs; where there is none, it is said", async () => {
		const folder = folderWith({ "e.json": EVIDENCE });
		const evidence = join(folder, "e.json");
		const { code, err } = await said(["find", SMALL_CAR, "--evidence", evidence, "--shop", folder]);
		expect([code, err]).toEqual([2, expect.stringMatching(/there is no shop's database here/)]);
	});

	test.each([
		['{"occasions": [', /not JSON/],
		['{"occasions": [{"codes": "P0113"}], "colour": 1}', /occasions\[0\]\.codes/],
	])("evidence %s: exit code 2", async (text, problem) => {
		const evidence = join(folderWith({ "e.json": text }), "e.json");
		const { code, err, out } = await said(["find", SMALL_CAR, "--evidence", evidence, "--json"]);
		expect([code, err]).toEqual([2, expect.stringMatching(problem)]);
		expect(errorsSchema.parse(JSON.parse(out)).errors[0]!.file).toBe(evidence);
	});
});

describe("bad input", () => {
	test("a folder that is not there", async () => {
		const { code, err, out } = await said(["rules", "/nowhere/car", "--json"]);
		expect([code, err]).toEqual([2, expect.stringMatching(/^\/nowhere\/car: there is no such folder/)]);
		expect(errorsSchema.parse(JSON.parse(out)).errors[0]!.file).toBe("/nowhere/car");
	});

	test("tables: every error with file, row, column, what, and what would be right", async () => {
		const wires = small()
			["wires.csv"]!.replace(/,1\.5,/, ",thick,")
			.replace("CU.7", "CU.seven");
		const { code, err, out } = await said([
			"compare",
			folderWith({ ...small(), "wires.csv": wires }),
			"--json",
		]);
		const { errors } = errorsSchema.strict().parse(JSON.parse(out));
		expect([code, errors.length, err.trim().split("\n").length]).toEqual([2, 2, 2]);
		expect(errors.map((error) => [error.file, error.column]).sort()).toEqual([
			["wires.csv", "from"],
			["wires.csv", "size"],
		]);
		expect(err).toMatch(/^wires\.csv, row \d+, column \w+: .+\. Wanted: .+$/m);
	});

	test("a table that is not UTF-8", async () => {
		const folder = folderWith(small());
		writeFileSync(join(folder, "parts.csv"), Buffer.from("part,kind,label\nF1,fuse,T\xfcr\n", "latin1"));
		const { code, err } = await said(["compare", folder]);
		expect([code, err]).toEqual([2, expect.stringMatching(/parts\.csv: this file is not UTF-8/)]);
	});

	test.each([
		[["compare"], /FOLDER/],
		[["compare", SMALL_CAR, "--colour"], /--colour/],
		[["reading", SMALL_CAR, "A", "B", "--what", "watts"], /volts, drop, ohms, amps/],
		[["find", SMALL_CAR], /--evidence/],
		[["serve", "--port", "65536"], /0 to 65535/],
		[["weave"], /weave/],
	])("%j: exit code 2, said once", async (words, problem) => {
		const { code, err, out } = await said(words);
		expect([code, out, err]).toEqual([2, "", expect.stringMatching(problem)]);
		expect(err.trim().split("\n").length).toBe(1);
		const { errors } = errorsSchema.parse(JSON.parse((await said([...words, "--json"])).out));
		expect(errors[0]!.problem).toMatch(problem);
	});
});

test("serve on a port in use: exit code 2, and what to set", async () => {
	const taken = createServer().listen(0, "127.0.0.1");
	await once(taken, "listening");
	onTestFinished(() => void taken.close());
	const { port } = taken.address() as AddressInfo;
	const { code, err } = await said(["serve", SMALL_CAR, "--port", String(port), "--data", folderWith({})]);
	expect(code).toBe(2);
	expect(err).toMatch(new RegExp(`^port ${port} on 127\\.0\\.0\\.1 is in use by another program\\. .*PORT=`));
});

const COPIES = ["backup", "restore", "export", "import"];

test("a shop backed up and restored, a job exported and imported: the same bytes, and what is wrong is said", async () => {
	const folder = folderWith({});
	const [old, fresh, shop, job] = ["old", "fresh", "shop.jsonl", "job.jsonl"].map((name) =>
		join(folder, name),
	);
	const run = async (...words: string[]) => {
		const { code, out } = await said([...words, "--json"]);
		return { code, answer: JSON.parse(out) as Record<string, unknown> };
	};
	const made = await run("backup", shop!, "--data", old!);
	expect(made).toMatchObject({
		code: 0,
		answer: { file: shop, sha256: expect.stringMatching(/^[0-9a-f]{64}$/) },
	});
	expect(await run("restore", shop!, "--data", fresh!)).toEqual(made);
	expect((await said(["backup", shop!, "--data", old!])).err).toMatch(/this file is there already/);
	expect((await said(["export", "van", job!, "--data", old!])).err).toMatch(/there is no job 'van'/);
	expect((await said(["import", shop!, "--data", old!])).err).toMatch(/no job file.*command export/);
	expect((await said(["restore", shop!, "--database", "postgres://127.0.0.1:1/x"])).err).toMatch(
		/DATABASE_URL/,
	);
});

describe("help", () => {
	test.each([[], ["--help"], ["help"]])("%j lists the commands", async (...words) => {
		const { code, out } = await said(words);
		expect(code).toBe(0);
		for (const command of ["compare", "rules", "reading", "prove", "power", "find", "serve", ...COPIES])
			expect(out).toContain(`\n  ${command} `);
	});

	test.each(["compare", "rules", "reading", "prove", "power", "find", "serve", ...COPIES])(
		"%s has examples and the exit codes",
		async (command) => {
			const { code, out } = await said([command, "--help"]);
			expect(code).toBe(0);
			expect(out).toContain(`npm run -s loomwright -- ${command} `);
			expect(out).toContain("Exit code 0");
		},
	);

	test.each(["compare", "rules", "reading", "power"])(
		"the examples of %s run as they stand",
		async (command) => {
			const { out } = await said([command, "--help"]);
			const examples = [...out.matchAll(/^ {2}npm run -s loomwright -- (.+)$/gm)].map((found) => found[1]!);
			expect(examples.length).toBeGreaterThan(0);
			for (const example of examples) {
				const words = example.split(" ").map((word) => (word.startsWith("demo/") ? join(ROOT, word) : word));
				expect([example, (await said(words)).code]).toEqual([example, 0]);
			}
		},
	);

	test("the evidence named in the examples of find is there, and is evidence", async () => {
		const { out } = await said(["find", "--help"]);
		const path = /--evidence (demo\/\S+)/.exec(out)![1]!;
		expect(parseEvidence(readText(join(ROOT, path)), path).occasions.length).toBeGreaterThan(0);
	});
});

describe("text", () => {
	test("fits the terminal and has no colour unless asked", async () => {
		for (const columns of [44, 72, 140]) {
			const { out } = await said(["compare", SMALL_CAR], { columns });
			for (const line of out.split("\n").slice(1)) expect(line.length).toBeLessThanOrEqual(columns);
			expect(out).not.toContain("\u001b");
		}
		expect((await said(["compare", SMALL_CAR], { colour: true })).out).toContain("\u001b[1m");
	});
});

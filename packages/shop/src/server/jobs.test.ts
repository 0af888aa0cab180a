import { cpSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { temporaryFolder } from "../store/temporary.test-helper.js";
import { JOB, SMALL_CAR, smallServer } from "./server.test-helper.js";
import { start } from "./start.js";

const wires = readFileSync(join(SMALL_CAR, "wires.csv"), "utf8");

describe("jobs", () => {
	test("the folder given is a job, with its tables as they are on disk", async () => {
		const { ask } = await smallServer();
		const { body } = await ask("GET", "/api/v1/jobs");
		expect(body.jobs).toEqual([{ id: "a-tiny-car", title: "A tiny car", created: expect.any(String) }]);
		const job = await ask("GET", JOB);
		expect(job.body.tables["wires.csv"]).toBe(wires);
		expect(job.body).not.toHaveProperty("source");
	});

	test("started again, the folder is not put in twice and what was stored is there", async () => {
		const first = await smallServer();
		await first.ask("POST", `${JOB}/entries`, { kind: "note", body: { text: "kept" }, person: "Kim" });
		await first.close();
		const second = await smallServer(first.data);
		expect((await second.ask("GET", "/api/v1/jobs")).body.jobs.length).toBe(1);
		expect((await second.ask("GET", `${JOB}/entries`)).body.entries[0].body).toEqual({ text: "kept" });
	});

	test("without a folder, an empty database starts with the demo car", async () => {
		const server = await start({ port: 0, host: "127.0.0.1", data: temporaryFolder() });
		const { jobs } = (await (await fetch(`${server.address}/api/v1/jobs`)).json()) as {
			jobs: { title: string }[];
		};
		await server.close();
		expect(jobs.map((job) => job.title)).toEqual(["The camper"]);
	});

	test("practice evidence comes with its title; a file without one goes by its name", async () => {
		const folder = temporaryFolder();
		cpSync(SMALL_CAR, folder, { recursive: true });
		mkdirSync(join(folder, "practice"), { recursive: true });
		const [titled, broken] = ['{"title": "One lamp dark", "occasions": []}', '{"title": '];
		writeFileSync(join(folder, "practice", "zz1.json"), titled);
		writeFileSync(join(folder, "practice", "zz2.json"), broken);
		const server = await start({ port: 0, host: "127.0.0.1", data: temporaryFolder(), folder });
		const answer = (await (await fetch(`${server.address}${JOB}/practice`)).json()) as {
			practice: { file: string }[];
		};
		await server.close();
		expect(answer.practice.filter(({ file }) => file.startsWith("zz"))).toEqual([
			{ file: "zz1.json", title: "One lamp dark", text: titled },
			{ file: "zz2.json", title: "zz2.json", text: broken },
		]);
	});

	test("a job that is not there", async () => {
		const { ask } = await smallServer();
		for (const path of ["", "/practice", "/entries", "/changes", "/findings"]) {
			const { status, body } = await ask("GET", `/api/v1/jobs/nobody${path}`);
			expect([status, body.error]).toEqual([404, "there is no job 'nobody'"]);
			expect(body.toDo).not.toBe("");
		}
	});
});

describe("tables", () => {
	const longer = wires.replace("1.2 m", "1.7 m");

	test("a sound table is stored, the history says so, and answers are of the new car", async () => {
		const { ask } = await smallServer();
		expect(longer).not.toBe(wires);
		const put = await ask("PUT", `${JOB}/tables/wires.csv?person=Kim`, { text: longer });
		expect([put.status, put.body]).toEqual([200, { changed: ["wires.csv"], misfits: 0 }]);
		expect((await ask("GET", JOB)).body.tables["wires.csv"]).toBe(longer);
		const { entries, fault } = (await ask("GET", `${JOB}/entries`)).body;
		expect(entries).toMatchObject([
			{ kind: "tables", person: "Kim", body: { files: [{ name: "wires.csv" }] } },
		]);
		expect(fault).toBeNull();
	});

	test("a bad table is refused whole, every error by file, row and column", async () => {
		const { ask } = await smallServer();
		const lines = wires.split("\n");
		lines[1] = lines[1]!.replace(/,[^,]*,/, ",NOWHERE.9,");
		const bad = [...lines, "W99,BAT.+,F1.in,thick,RD,1 m,,"].join("\n");
		const { status, body } = await ask("PUT", `${JOB}/tables/wires.csv`, { text: bad });
		expect(status).toBe(422);
		expect(body.errors).toEqual([
			expect.objectContaining({ file: "wires.csv", row: 2, column: "from" }),
			expect.objectContaining({ file: "wires.csv", column: "size" }),
		]);
		for (const { problem, wanted } of body.errors) expect([problem, wanted]).not.toContain("");
		expect((await ask("GET", JOB)).body.tables["wires.csv"]).toBe(wires);
		expect((await ask("GET", `${JOB}/entries`)).body.entries).toEqual([]);
	});

	test("of several tables one bad one keeps all from being stored", async () => {
		const { ask } = await smallServer();
		const tables = { "wires.csv": longer, "joints.csv": "joint,kind\nG1,rope\n" };
		expect((await ask("PUT", `${JOB}/tables`, { tables })).status).toBe(422);
		expect((await ask("GET", JOB)).body.tables["wires.csv"]).toBe(wires);
	});

	test("a table may come as the file itself", async () => {
		const server = await smallServer();
		const headers = { "content-type": "text/csv" };
		const put = await fetch(`${server.address}${JOB}/tables/wires.csv`, {
			method: "PUT",
			headers,
			body: longer,
		});
		expect(put.status).toBe(200);
		expect((await server.ask("GET", JOB)).body.tables["wires.csv"]).toBe(longer);
	});

	test.each(["notes.csv", "wires.exe", "constructor.csv", "..%2Fwires.csv"])(
		"%s is no table",
		async (file) => {
			const { ask } = await smallServer();
			const { status, body } = await ask("PUT", `${JOB}/tables/${file}`, { text: "x" });
			expect([status, body.error]).toEqual([400, expect.stringContaining("wires")]);
		},
	);
});

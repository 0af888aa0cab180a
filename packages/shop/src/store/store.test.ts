import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import Database from "better-sqlite3";
import { describe, expect, test } from "vitest";
import { onEveryDatabase } from "./databases.test-helper.js";
import { StoreError } from "./error.js";
import { migrations } from "./migrations/index.js";
import { Store } from "./store.js";
import { someJob, temporaryFolder, temporaryStore } from "./temporary.test-helper.js";

const by = { id: "e1", person: "Kim" };

describe("opening", () => {
	test("an empty folder: makes the file, does every migration, keeps the settings that make a commit last", async () => {
		const { file } = await temporaryStore();
		const db = new Database(file);
		expect(db.prepare("select name from kysely_migration order by name").pluck().all()).toEqual(
			Object.keys(migrations).sort(),
		);
		expect(db.pragma("journal_mode", { simple: true })).toBe("wal");
		db.close();
	});

	test("again: what was stored is there", async () => {
		const { store, file } = await temporaryStore();
		await store.addJob(someJob);
		const again = await Store.open(file);
		expect(await again.jobs()).toEqual(await store.jobs());
		await again.close();
	});

	test("a file that is no database is refused and left alone", async () => {
		const file = join(temporaryFolder(), "loomwright.db");
		writeFileSync(file, "part,kind\nECU,control unit\n".repeat(100));
		const opening = Store.open(file);
		await expect(opening).rejects.toThrow(StoreError);
		await expect(opening).rejects.toThrow(/not a database/);
		expect(readFileSync(file, "utf8")).toContain("control unit");
	});

	test("a database with a migration this program does not know is refused", async () => {
		const { store, file } = await temporaryStore();
		await store.addJob(someJob);
		const db = new Database(file);
		db.prepare("insert into kysely_migration values ('9999-later', '2040-01-01')").run();
		db.close();
		await expect(Store.open(file)).rejects.toThrow(/written by a newer Loomwright/);
	});

	test("a folder that cannot be made is refused", async () => {
		const file = join(temporaryFolder(), "file");
		writeFileSync(file, "");
		await expect(Store.open(join(file, "data", "loomwright.db"))).rejects.toThrow(StoreError);
	});
});

onEveryDatabase((place) => {
	describe("jobs", () => {
		test("come back as stored; a second one of the same title gets another id", async (context) => {
			const { store } = await place.store(context);
			const first = await store.addJob(someJob);
			const second = await store.addJob({ ...someJob, title: "Camper: first CAR!" });
			const third = await store.addJob({ ...someJob, title: "轎車" });
			expect([first.id, second.id, third.id]).toEqual(["camper-first-car", "camper-first-car-2", "job"]);
			expect(await store.tables(first.id)).toEqual(someJob.tables);
			expect(await store.practice(first.id)).toEqual(someJob.practice);
			expect((await store.jobs()).map((job) => job.title)).toEqual([
				"Camper, first car",
				"Camper: first CAR!",
				"轎車",
			]);
			expect(await store.job("nobody")).toBeUndefined();
		});

		test("tables are replaced together, and the history says which", async (context) => {
			const { store } = await place.store(context);
			const { id } = await store.addJob(someJob);
			const files = {
				"wires.csv": "wire,from\n",
				"parts.csv": someJob.tables["parts.csv"]!,
				"joints.csv": "joint\n",
			};
			const entry = await store.replaceTables(id, files, by, () => {});
			expect(await store.tables(id)).toEqual({ ...someJob.tables, ...files });
			// sha256sum of "wire\n", "wire,from\n" and "joint\n" by coreutils
			expect(entry?.body).toEqual({
				files: [
					{
						name: "wires.csv",
						before: "240623ea2906f35afde4323ce3c3fe45f0fee4326fcd986dbf2dbba632d2e4d0",
						after: "e0070545ee907d04b2449b1d2927cec3917003e7201c19c5cc6c43158295930b",
					},
					{
						name: "joints.csv",
						before: "",
						after: "ba587b1aac2552dca175d4302cc95989a68ab1e1eeab95d09354f28b91a4bb9a",
					},
				],
			});
		});

		test("a refused replacement leaves tables and history as they were", async (context) => {
			const { store } = await place.store(context);
			const { id } = await store.addJob(someJob);
			const refuse = store.replaceTables(id, { "wires.csv": "x" }, by, (tables) => {
				expect(tables).toEqual({ ...someJob.tables, "wires.csv": "x" });
				throw new Error("no");
			});
			await expect(refuse).rejects.toThrow("no");
			expect(await store.tables(id)).toEqual(someJob.tables);
			expect(await store.entries(id)).toEqual([]);
		});

		test("a table goes; texts that were replaced are kept under their fingerprint, each once", async (context) => {
			const { store } = await place.store(context);
			const { id } = await store.addJob(someJob);
			let count = 0;
			const wires = (text: string | null) => {
				count += 1;
				return store.replaceTables(id, { "wires.csv": text }, { ...by, id: `e${count}` }, () => {});
			};
			await wires("wire,from\n");
			await wires(null);
			expect(Object.keys(await store.tables(id))).not.toContain("wires.csv");
			await wires("wire\n");
			const entry = await wires("wire,from\n");
			const texts = await store.replacedTexts(id);
			expect([...texts.values()].sort()).toEqual(["wire\n", "wire,from\n"]);
			if (entry?.kind !== "tables") throw new Error("no entry of tables");
			expect(texts.get(entry.body.files[0]!.before)).toBe("wire\n");
		});

		test("the same text again is no change", async (context) => {
			const { store } = await place.store(context);
			const { id } = await store.addJob(someJob);
			expect(await store.replaceTables(id, someJob.tables, by, () => {})).toBeUndefined();
		});
	});
});

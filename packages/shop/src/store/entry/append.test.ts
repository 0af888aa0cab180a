import Database from "better-sqlite3";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { someJob, temporaryStore } from "../temporary.test-helper.js";
import type { NewEntry } from "./append.js";
import { entryHash, sortedJson } from "./hash.js";

const note = (id: string, text: string): NewEntry => ({ id, person: "Kim", kind: "note", body: { text } });

async function jobWithNotes(count: number) {
	const { store, file } = await temporaryStore();
	const { id: job } = await store.addJob(someJob);
	for (let n = 1; n <= count; n += 1) await store.append(job, note(`e${n}`, `note ${n}`));
	return { store, file, job };
}

/** Changes the file behind the program's back, its guards taken off. */
function tamper(file: string, statement: string): void {
	const db = new Database(file);
	db.exec("drop trigger entry_no_update; drop trigger entry_no_delete");
	db.exec(statement);
	db.close();
}

describe("appending", () => {
	test("entries follow each other, each with the hash of the one before", async () => {
		const { store, job } = await jobWithNotes(3);
		const entries = await store.entries(job);
		expect(entries.map((entry) => entry.place)).toEqual([1, 2, 3]);
		expect(entries.map((entry) => entry.previous)).toEqual(["", entries[0]!.hash, entries[1]!.hash]);
		expect(entries[0]).toMatchObject({ person: "Kim", kind: "note", body: { text: "note 1" } });
		expect(await store.entries(job, 2)).toEqual([entries[2]]);
		expect(await store.verify(job)).toBeUndefined();
	});

	test("two jobs have chains of their own", async () => {
		const { store, job } = await jobWithNotes(2);
		const other = await store.addJob(someJob);
		const { entry } = await store.append(other.id, note("x1", "first"));
		expect(entry).toMatchObject({ place: 1, previous: "" });
		expect(await store.verify(job)).toBeUndefined();
	});

	test("many at once still make one chain", async () => {
		const { store, job } = await jobWithNotes(0);
		await Promise.all(Array.from({ length: 50 }, (_, n) => store.append(job, note(`e${n}`, "at once"))));
		expect((await store.entries(job)).length).toBe(50);
		expect(await store.verify(job)).toBeUndefined();
	});

	test("the same entry again is stored once; another under its id is refused", async () => {
		const { store, job } = await jobWithNotes(1);
		expect(await store.append(job, note("e1", "note 1"))).toMatchObject({
			added: false,
			entry: { place: 1 },
		});
		await expect(store.append(job, note("e1", "another"))).rejects.toThrow(/another entry has the id e1/);
		expect((await store.entries(job)).length).toBe(1);
	});

	test("an unknown job is refused by the database itself", async () => {
		const { store } = await temporaryStore();
		await expect(store.append("nobody", note("e1", "x"))).rejects.toThrow(/FOREIGN KEY/);
	});
});

describe("history", () => {
	test("the database refuses to change or delete an entry", async () => {
		const { file } = await jobWithNotes(1);
		const db = new Database(file);
		expect(() => db.exec("update entry set person = 'Lee'")).toThrow(/append-only/);
		expect(() => db.exec("delete from entry")).toThrow(/append-only/);
		db.close();
	});

	test.each([
		[
			"an entry changed",
			'update entry set body = \'{"text":"other"}\' where place = 2',
			"entry 2 is not as it was written",
		],
		[
			"a time changed",
			"update entry set time = '2031-01-01T00:00:00.000Z' where place = 1",
			"entry 1 is not as it was written",
		],
		["an entry dropped", "delete from entry where place = 2", "entry 2 is missing"],
		[
			"an entry dropped and the rest moved up",
			"delete from entry where place = 2; update entry set place = 2 where place = 3",
			"entry 2 does not follow the one before it",
		],
	])("%s shows", async (_what, statement, fault) => {
		const { store, file, job } = await jobWithNotes(3);
		tamper(file, statement);
		expect(await store.verify(job)).toBe(fault);
	});
});

describe("hash", () => {
	test("is SHA-256 of the covered fields as a JSON array (value by coreutils sha256sum)", () => {
		const entry = {
			job: "j",
			place: 1,
			id: "e",
			time: "t",
			stored: "s",
			person: "ü",
			kind: "note",
			body: "{}",
			previous: "",
		};
		expect(entryHash(entry)).toBe("25e3666099bf374b27cf1ed007910e24b591f1e99876762a403ff84af6f76d8a");
	});

	test("the body's text does not depend on the order of its keys, and is its value again", () => {
		fc.assert(
			fc.property(fc.dictionary(fc.string(), fc.jsonValue()), (value) => {
				const turned = Object.fromEntries(Object.entries(value).reverse());
				expect(sortedJson(turned)).toBe(sortedJson(value));
				expect(sortedJson(JSON.parse(sortedJson(value)))).toBe(sortedJson(value));
			}),
			{ seed: 7 },
		);
	});
});

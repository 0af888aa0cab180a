import fc from "fast-check";
import { sql } from "kysely";
import { describe, expect, type TestContext, test } from "vitest";
import { onEveryDatabase } from "../databases.test-helper.js";
import { isPostgres } from "../driver/open.js";
import type { Store } from "../store.js";
import { someJob } from "../temporary.test-helper.js";
import type { NewEntry } from "./append.js";
import { entryHash, sortedJson } from "./hash.js";

const note = (id: string, text: string): NewEntry => ({ id, person: "Kim", kind: "note", body: { text } });

/** Changes the database behind the program's back, its guards taken off. */
async function tamper(store: Store, statements: readonly string[]): Promise<void> {
	await store.read(async (db) => {
		const on = isPostgres(db) ? " on entry" : "";
		for (const act of ["update", "delete"]) await sql.raw(`drop trigger entry_no_${act}${on}`).execute(db);
		for (const statement of statements) await sql.raw(statement).execute(db);
	});
}

onEveryDatabase((place) => {
	async function jobWithNotes(context: TestContext, count: number) {
		const { store } = await place.store(context);
		const { id: job } = await store.addJob(someJob);
		for (let n = 1; n <= count; n += 1) await store.append(job, note(`e${n}`, `note ${n}`));
		return { store, job };
	}

	describe("appending", () => {
		test("entries follow each other, each with the hash of the one before", async (context) => {
			const { store, job } = await jobWithNotes(context, 3);
			const entries = await store.entries(job);
			expect(entries.map((entry) => entry.place)).toEqual([1, 2, 3]);
			expect(entries.map((entry) => entry.previous)).toEqual(["", entries[0]!.hash, entries[1]!.hash]);
			expect(entries[0]).toMatchObject({ person: "Kim", kind: "note", body: { text: "note 1" } });
			expect(await store.entries(job, 2)).toEqual([entries[2]]);
			expect(await store.verify(job)).toBeUndefined();
		});

		test("two jobs have chains of their own", async (context) => {
			const { store, job } = await jobWithNotes(context, 2);
			const other = await store.addJob(someJob);
			const { entry } = await store.append(other.id, note("x1", "first"));
			expect(entry).toMatchObject({ place: 1, previous: "" });
			expect(await store.verify(job)).toBeUndefined();
			expect([...(await store.entriesOfKinds(["note"])).values()].map((list) => list.length)).toEqual([2, 1]);
		});

		test("many at once still make one chain", async (context) => {
			const { store, job } = await jobWithNotes(context, 0);
			await Promise.all(Array.from({ length: 50 }, (_, n) => store.append(job, note(`e${n}`, "at once"))));
			expect((await store.entries(job)).length).toBe(50);
			expect(await store.verify(job)).toBeUndefined();
		});

		test("the same entry many times at once, also to two jobs, is stored once", async (context) => {
			const { store, job } = await jobWithNotes(context, 0);
			const other = await store.addJob(someJob);
			const sent = await Promise.allSettled(
				Array.from({ length: 20 }, (_, n) => store.append(n % 2 ? job : other.id, note("same", "once"))),
			);
			expect(sent.filter((one) => one.status === "fulfilled").length).toBe(10);
			const stored = [...(await store.entries(job)), ...(await store.entries(other.id))];
			expect(stored.length).toBe(1);
		});

		test("the same entry again is stored once; another under its id is refused", async (context) => {
			const { store, job } = await jobWithNotes(context, 1);
			expect(await store.append(job, note("e1", "note 1"))).toMatchObject({
				added: false,
				entry: { place: 1 },
			});
			await expect(store.append(job, note("e1", "another"))).rejects.toThrow(/another entry has the id e1/);
			expect((await store.entries(job)).length).toBe(1);
		});

		test("what the writer had seen is kept, never more than there was; the clock may go as it likes", async (context) => {
			const { store, job } = await jobWithNotes(context, 2);
			const tablet = { device: "tablet-1", counter: 7, account: "kim" };
			const early = { ...note("a", "x"), ...tablet, seen: 1, time: "1999-01-01T00:00:00.000Z" };
			await store.append(job, early);
			await store.append(job, { ...note("b", "y"), ...tablet, seen: 99 });
			const entries = await store.entries(job, 2);
			expect(entries.map(({ place, seen, counter }) => [place, seen, counter])).toEqual([
				[3, 1, 7],
				[4, 3, 7],
			]);
			expect(await store.verify(job)).toBeUndefined();
		});

		test("an unknown job is refused", async (context) => {
			const { store } = await place.store(context);
			await expect(store.append("nobody", note("e1", "x"))).rejects.toThrow("there is no job 'nobody'");
		});
	});

	describe("history", () => {
		test("the database refuses to change or delete an entry", async (context) => {
			const { store } = await jobWithNotes(context, 1);
			for (const statement of ["update entry set person = 'Lee'", "delete from entry"])
				await expect(store.read((db) => sql.raw(statement).execute(db))).rejects.toThrow(/append-only/);
		});

		const CASES: [what: string, statements: string[], fault: string][] = [
			[
				"an entry changed",
				['update entry set body = \'{"text":"other"}\' where place = 2'],
				"entry 2 is not as it was written",
			],
			[
				"a time changed",
				["update entry set time = '2031-01-01T00:00:00.000Z' where place = 1"],
				"entry 1 is not as it was written",
			],
			[
				"what was seen changed",
				["update entry set seen = 0 where place = 3"],
				"entry 3 is not as it was written",
			],
			[
				"the older form claimed",
				["update entry set form = 1 where place = 1"],
				"entry 1 is not as it was written",
			],
			["an entry dropped", ["delete from entry where place = 2"], "entry 2 is missing"],
			[
				"an entry dropped and the rest moved up",
				["delete from entry where place = 2", "update entry set place = 2 where place = 3"],
				"entry 2 does not follow the one before it",
			],
		];
		for (const [what, statements, fault] of CASES)
			test(`${what} shows`, async (context) => {
				const { store, job } = await jobWithNotes(context, 3);
				await tamper(store, statements);
				expect(await store.verify(job)).toBe(fault);
			});

		test("from a place on, only what follows is looked at", async (context) => {
			const { store, job } = await jobWithNotes(context, 3);
			await tamper(store, ["update entry set person = 'Lee' where place = 2"]);
			expect(await store.verify(job, 1)).toBe("entry 2 is not as it was written");
			expect(await store.verify(job, 2)).toBeUndefined();
			expect(await store.verify(job, 3)).toBeUndefined();
		});
	});
});

describe("hash", () => {
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
		account: "a",
		device: "d",
		counter: 3,
		seen: 2,
		standing: "{}",
	};
	test("is SHA-256 of the covered fields as a JSON array (values by coreutils sha256sum)", () => {
		expect(entryHash({ ...entry, form: 1 })).toBe(
			"25e3666099bf374b27cf1ed007910e24b591f1e99876762a403ff84af6f76d8a",
		);
		expect(entryHash({ ...entry, form: 2 })).toBe(
			"9300a4b9e28ae545b6260573a8dd0be42b0f2a8a67153d572a4dbbc24cc5a642",
		);
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

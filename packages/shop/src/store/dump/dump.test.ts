import { randomBytes } from "node:crypto";
import { expect, type TestContext, test } from "vitest";
import { onEveryDatabase, type Place } from "../databases.test-helper.js";
import type { Store } from "../store.js";
import { someJob, temporaryStore } from "../temporary.test-helper.js";

async function text(store: Store, job?: string): Promise<string> {
	const lines: string[] = [];
	await store.dump(job, async (all) => {
		for await (const line of all) lines.push(line);
	});
	return lines.join("");
}

async function* linesOf(file: string): AsyncGenerator<string> {
	yield* file.replace(/\n$/, "").split("\n");
}

async function filled(place: Place, context: TestContext): Promise<Store> {
	const { store } = await place.store(context);
	for (const title of ["Zweiter Wagen", "älter", "A first"]) await store.addJob({ ...someJob, title });
	for (const { id } of await store.jobs()) {
		for (let n = 0; n < 12; n += 1)
			await store.append(id, {
				id: `${id}-${n}`,
				person: "Kim",
				kind: "note",
				body: { text: `${n} – 轎車` },
			});
		const by = { id: `${id}-tables`, person: "Kim" };
		await store.replaceTables(id, { "wires.csv": "wire,from\n" }, by, () => {});
		await store.addAttachment(id, "image/png", randomBytes(3000));
		await store.addAttachment(id, "image/png", randomBytes(3000));
	}
	return store;
}

onEveryDatabase((place) => {
	test("restored, also into the other database, it is byte for byte the same", async (context) => {
		const file = await text(await filled(place, context));
		const { store: same } = await place.store(context);
		const { store: embedded } = await temporaryStore();
		for (const store of [same, embedded]) {
			await store.restore(linesOf(file));
			expect(await text(store)).toBe(file);
			await store.append("a-first", {
				id: "later-1",
				person: "Lee",
				kind: "note",
				body: { text: "goes on" },
			});
			expect(await store.verify("a-first")).toBeUndefined();
		}
	});

	test("one job comes into another shop, beside one of its own name, with its history and photos", async (context) => {
		const from = await filled(place, context);
		const file = await text(from, "a-first");
		const { store } = await place.store(context);
		await store.addJob({ ...someJob, title: "A first" });
		const job = await store.importJob(linesOf(file));
		expect([job.id, job.title]).toEqual(["a-first-2", "A first"]);
		expect(await store.entries(job.id)).toEqual(await from.entries("a-first"));
		expect(await store.tables(job.id)).toEqual(await from.tables("a-first"));
		await store.append(job.id, { id: "later-1", person: "Lee", kind: "note", body: { text: "goes on" } });
		expect(await store.verify(job.id)).toBeUndefined();
		expect(await store.replacedTexts(job.id)).toEqual(await from.replacedTexts("a-first"));
		expect((await store.replacedTexts(job.id)).size).toBe(1);
		// A copy of a copy, too.
		const third = await place.store(context);
		expect((await third.store.importJob(linesOf(await text(store, job.id)))).id).toBe("a-first-2");
		expect(await third.store.verify("a-first-2")).toBeUndefined();
		await expect(store.importJob(linesOf(file))).rejects.toThrow(/this job is here already, as 'a-first-2'/);
	});

	test("a file that is not whole, or not of this kind, is refused, and nothing of it stays", async (context) => {
		const from = await filled(place, context);
		const file = await text(from, "a-first");
		const lines = file.trimEnd().split("\n");
		const without = (at: number) => lines.filter((_, k) => k !== at).join("\n");
		const note = lines.findIndex((line) => line.includes('"kind":"note"'));
		const cases: [string, RegExp][] = [
			[lines.slice(0, -3).join("\n"), /cut short/],
			[without(note), /changed or lines are missing/],
			[file.replace("轎車", "changed"), /changed or lines are missing/],
			[file.replace('"loomwright":"job"', '"loomwright":"backup"'), /no job file/],
			[file.replace('"version":1', '"version":2'), /newer Loomwright/],
			["part,kind\n", /line 1 is no JSON object/],
			["", /line 1 is no JSON object/],
			[`${file}{}`, /after the file's last line/],
		];
		const { store } = await place.store(context);
		for (const [bad, message] of cases) {
			await expect(store.importJob(linesOf(bad))).rejects.toThrow(message);
			expect(await store.jobs()).toEqual([]);
		}
		await expect(from.restore(linesOf(await text(from)))).rejects.toThrow("is not empty");
	});
});

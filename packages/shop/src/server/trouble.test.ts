import { expect, test } from "vitest";
import { readFolder } from "../folder/read-folder.js";
import { openDatabase } from "../store/driver/open.js";
import { Store } from "../store/store.js";
import { someJob, temporaryFolder, temporaryStore } from "../store/temporary.test-helper.js";
import { buildApp } from "./app.js";
import { SMALL_CAR } from "./server.test-helper.js";

const note = (n: number, text: string) => ({
	id: `tablet-${n}-note`,
	kind: "note",
	body: { text },
	person: "Kim",
});

test("the disk fills up in the middle of a queue: 503 and what to do, and sending again stores all once", async () => {
	const { store, file } = await temporaryStore();
	const { id: job } = await store.addJob({ ...someJob, tables: readFolder(SMALL_CAR).tables });
	const tight = await Store.open(file, { pages: 90 });
	const told: unknown[] = [];
	const serve = async (on: Store, entries: object[]) => {
		const app = await buildApp({ store: on, web: temporaryFolder(), report: (error) => told.push(error) });
		const answer = await app.inject({
			method: "POST",
			url: `/api/v1/jobs/${job}/queue`,
			payload: { entries },
		});
		await app.close();
		return answer;
	};
	const entries = Array.from({ length: 60 }, (_, n) => note(n, "long ".repeat(2000)));
	const full = await serve(tight, entries);
	expect([full.statusCode, full.json()]).toEqual([
		503,
		expect.objectContaining({
			error: expect.stringContaining("full"),
			toDo: expect.stringContaining("Free space"),
		}),
	]);
	await tight.close();
	expect(told.length).toBe(1);
	expect((await serve(store, entries)).statusCode).toBe(200);
	expect((await store.entries(job)).map(({ id }) => id)).toEqual(
		entries.map((entry) => (entry as { id: string }).id),
	);
	expect(await store.verify(job)).toBeUndefined();
});

test("the database is held by another program: 503 and what to do", async () => {
	const { store, file } = await temporaryStore();
	const { id: job } = await store.addJob({ ...someJob, tables: readFolder(SMALL_CAR).tables });
	const waiting = await Store.open(file, { busyMs: 20 });
	const app = await buildApp({ store: waiting, web: temporaryFolder(), report: () => {} });
	const send = () =>
		app.inject({ method: "POST", url: `/api/v1/jobs/${job}/entries`, payload: note(1, "x") });
	const other = openDatabase(file);
	await other.transaction().execute(async () => {
		const answer = await send();
		expect([answer.statusCode, answer.json().toDo]).toEqual([
			503,
			expect.stringContaining("Close whatever else"),
		]);
	});
	await other.destroy();
	expect((await send()).statusCode).toBe(201);
	await app.close();
	await waiting.close();
});

import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { onEveryDatabase } from "../store/databases.test-helper.js";
import { Store } from "../store/store.js";
import { someJob, temporaryFolder } from "../store/temporary.test-helper.js";
import { backup, exportJob, importJob, restore } from "./copies.js";

onEveryDatabase((place) => {
	test("a backup while the shop is at work, restored elsewhere, is the same shop", async (context) => {
		const { store, where } = await place.store(context);
		const { id } = await store.addJob(someJob);
		await store.append(id, { id: "n1", person: "Kim", kind: "note", body: { text: "kept" } });
		const file = join(temporaryFolder(), "shop.jsonl");
		const made = await backup(where, file);
		expect(made.bytes).toBe(readFileSync(file).length);
		const empty = await place.empty(context);
		expect(await restore(empty, file)).toEqual(made);
		const again = await Store.open(empty);
		expect(await again.entries(id)).toEqual(await store.entries(id));
		await again.close();
		await expect(restore(empty, file)).rejects.toThrow("is not empty");
		await expect(backup(where, file)).rejects.toThrow("this file is there already");
	});

	test("one job goes to another shop as a file", async (context) => {
		const { store, where } = await place.store(context);
		const { id } = await store.addJob(someJob);
		const folder = temporaryFolder();
		const file = join(folder, "camper.jsonl");
		await exportJob(where, id, file);
		expect(readdirSync(folder)).toEqual(["camper.jsonl"]);
		const other = await place.empty(context);
		expect(await importJob(other, file)).toMatchObject({ job: id });
		await expect(exportJob(where, "nobody", join(folder, "x"))).rejects.toThrow("there is no job 'nobody'");
	});
});

test("a file that was cut short is refused and named", async () => {
	const folder = temporaryFolder();
	const file = join(folder, "cut.jsonl");
	writeFileSync(file, '{"loomwright":"backup","schema":"0001-jobs","version":1}\n');
	await expect(restore(join(folder, "new.db"), file)).rejects.toThrow("cut short");
	await expect(restore(join(folder, "new.db"), join(folder, "none"))).rejects.toThrow(
		"there is no such file",
	);
});

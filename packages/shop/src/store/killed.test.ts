import { spawn } from "node:child_process";
import { once } from "node:events";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { someJob, temporaryStore } from "./temporary.test-helper.js";

const writer = fileURLToPath(new URL("./killed.test-helper.ts", import.meta.url));

test("a writer killed in the middle loses nothing it said was stored, and the chain holds", async () => {
	const { store, file } = await temporaryStore();
	const { id: job } = await store.addJob(someJob);
	const acknowledged: string[] = [];
	for (const stopAfter of [1, 25]) {
		const child = spawn(process.execPath, ["--conditions=source", "--import", "tsx", writer, file, job]);
		const ended = once(child, "exit");
		for await (const line of createInterface(child.stdout)) {
			if (!acknowledged.includes(line)) acknowledged.push(line);
			if (acknowledged.length >= stopAfter) child.kill("SIGKILL");
		}
		expect(await ended).toEqual([null, "SIGKILL"]);
	}
	const stored = (await store.entries(job)).map((entry) => entry.id);
	expect(acknowledged.length).toBeGreaterThanOrEqual(25);
	expect(stored.slice(0, acknowledged.length)).toEqual(acknowledged);
	// At most the entry being answered for when each kill came is stored beyond those.
	expect(await store.verify(job)).toBeUndefined();
});

import { spawn } from "node:child_process";
import { once } from "node:events";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { onEveryDatabase } from "./databases.test-helper.js";
import { someJob } from "./temporary.test-helper.js";

const writer = fileURLToPath(new URL("./killed.test-helper.ts", import.meta.url));

onEveryDatabase((place) => {
	test("a writer killed in the middle loses nothing it said was stored, and the chain holds", async (context) => {
		const { store, where } = await place.store(context);
		const { id: job } = await store.addJob(someJob);
		const acknowledged: string[] = [];
		for (const stopAfter of [1, 25]) {
			const words = [writer, where, job, `run${stopAfter}`];
			const child = spawn(process.execPath, ["--conditions=source", "--import", "tsx", ...words]);
			const ended = once(child, "exit");
			for await (const line of createInterface(child.stdout)) {
				acknowledged.push(line);
				if (acknowledged.length >= stopAfter) child.kill("SIGKILL");
			}
			expect(await ended).toEqual([null, "SIGKILL"]);
		}
		const stored = (await store.entries(job)).map((entry) => entry.id);
		expect(acknowledged.length).toBeGreaterThanOrEqual(25);
		expect(stored.filter((id) => acknowledged.includes(id))).toEqual(acknowledged);
		// At most the entry being answered for when each kill came is stored beyond those.
		expect(stored.length).toBeLessThanOrEqual(acknowledged.length + 2);
		expect(await store.verify(job)).toBeUndefined();
	});
});

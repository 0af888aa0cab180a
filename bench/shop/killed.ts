/** Kills a process that signs off steps, again and again, and looks for what it had said was stored. */
import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { createInterface } from "node:readline";
import { fileURLToPath } from "node:url";
import { Store } from "../../packages/shop/src/store/store.js";
import { seeded } from "./random.js";

const writer = fileURLToPath(new URL("writer.mjs", import.meta.url));

export interface Killed {
	readonly acknowledged: number;
	readonly lost: number;
	/** Where the chain does not hold; undefined: it holds. */
	readonly fault: string | undefined;
}

/** @param where a database that is empty */
export async function killed(where: string, times: number, seed: number): Promise<Killed> {
	const random = seeded(seed);
	const store = await Store.open(where);
	const { id: job } = await store.addJob({ title: "Van", source: "", tables: {}, practice: {} });
	const acknowledged: string[] = [];
	const start = (n: number): ChildProcess =>
		spawn(process.execPath, [writer, where, job, `run${n}`], { stdio: ["pipe", "pipe", "inherit"] });
	let next = start(0);
	for (let n = 1; n <= times; n += 1) {
		const child = next;
		// The next one loads while this one writes.
		if (n < times) next = start(n);
		const stopAfter = 1 + Math.floor(random() * 20);
		const ended = once(child, "exit");
		child.stdin?.write("go\n");
		let said = 0;
		for await (const line of createInterface({ input: child.stdout! })) {
			acknowledged.push(line);
			said += 1;
			if (said >= stopAfter) child.kill("SIGKILL");
		}
		const [code, signal] = (await ended) as [number | null, string | null];
		if (signal !== "SIGKILL") throw new Error(`the writer ended by itself: ${code ?? signal}`);
	}
	const stored = new Set((await store.entries(job)).map(({ id }) => id));
	const fault = await store.verify(job);
	await store.close();
	return {
		acknowledged: acknowledged.length,
		lost: acknowledged.filter((id) => !stored.has(id)).length,
		fault,
	};
}

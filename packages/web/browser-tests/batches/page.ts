/** The asking end in a page: the same job by the page itself, and by workers. */
import { spreadBatches, workBatches } from "@loomwright/engine";
import { jobOf, PIECE, printOf } from "./job.js";

async function run(tables: Readonly<Record<string, string>>, workers: number) {
	const job = jobOf(tables);
	const alone = Array.from(workBatches(job, { pieceBytes: PIECE }), printOf);
	const threads = Array.from(
		{ length: workers },
		() => new Worker(new URL("./worker.ts", import.meta.url), { type: "module" }),
	);
	const spread: string[] = [];
	for await (const piece of spreadBatches(threads, job, PIECE)) spread.push(printOf(piece));
	for (const thread of threads) thread.terminate();
	return { alone, spread };
}

declare global {
	interface Window {
		batches: typeof run;
	}
}
window.batches = run;

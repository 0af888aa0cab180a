/** Node's threads as ports of the engine's batches. */
import { Worker } from "node:worker_threads";
import type { BatchPort } from "@loomwright/engine";

export interface BatchThreads {
	/** For `spreadBatches`. */
	readonly ports: readonly BatchPort[];
	/** Ends the threads. */
	close(): Promise<void>;
}

/** Starts threads that work on batches; they wait, and keep the process alive, until closed. */
export function batchThreads(count: number): BatchThreads {
	const workers = Array.from({ length: count }, start);
	return {
		ports: workers.map(portOf),
		async close() {
			await Promise.all(workers.map((worker) => worker.terminate()));
		},
	};
}

function portOf(worker: Worker): BatchPort {
	const port: BatchPort = {
		postMessage: (message, transfer) => worker.postMessage(message, transfer),
		onmessage: null,
	};
	worker.on("message", (data) => port.onmessage?.({ data }));
	const gone = (message: string) => port.onmessage?.({ data: { reply: "gone", message } });
	worker.on("error", (error) => gone(error instanceof Error ? error.message : String(error)));
	worker.on("exit", () => gone("a batch thread ended"));
	return port;
}

/** A thread does not take over how its process reads TypeScript, so running from source it is set up here. */
const BOOT = `
const { workerData } = require("node:worker_threads");
(async () => {
	if (workerData.loader) (await import(workerData.loader)).register();
	await import(workerData.module);
})();
`;

function start(): Worker {
	const compiled = import.meta.url.endsWith(".js");
	return new Worker(BOOT, {
		eval: true,
		execArgv: compiled ? [] : ["--conditions=source"],
		workerData: {
			module: new URL(compiled ? "./worker.js" : "./worker.ts", import.meta.url).href,
			loader: compiled ? "" : import.meta.resolve("tsx/esm/api"),
		},
	});
}

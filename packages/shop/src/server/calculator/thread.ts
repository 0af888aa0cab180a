/** Starts the server's computing threads. */
import { Worker } from "node:worker_threads";

/** A thread does not take over how its process reads TypeScript, so running from source it is set up here. */
const BOOT = `
const { workerData } = require("node:worker_threads");
(async () => {
	if (workerData.loader) (await import(workerData.loader)).register();
	await import(workerData.module);
})();
`;

/**
 * @param module that the thread runs, as it is called in the source: `keeper.ts`
 * @param told what it finds as `workerData.told`
 */
export function startThread(module: URL, told: unknown): Worker {
	const compiled = import.meta.url.endsWith(".js");
	const workerData = {
		module: compiled ? module.href.replace(/\.ts$/, ".js") : module.href,
		loader: compiled ? "" : import.meta.resolve("tsx/esm/api"),
		told,
	};
	return new Worker(BOOT, { eval: true, workerData });
}

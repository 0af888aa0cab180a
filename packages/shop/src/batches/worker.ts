/** One thread of `batchThreads`. */
import { parentPort } from "node:worker_threads";
import { type BatchPort, serveBatches } from "@loomwright/engine";

const port: BatchPort = {
	postMessage: (message, transfer) => parentPort!.postMessage(message, transfer),
	onmessage: null,
};
serveBatches(port);
parentPort!.on("message", (data) => port.onmessage?.({ data }));

/** The working end: answers for pieces of a job until its thread ends. */
import type { BatchPort, Order, Reply } from "./port.js";
import { BatchWork } from "./work.js";

/** Answers on a port, one order after another. A newly opened job takes the place of the one before. */
export function serveBatches(port: BatchPort): void {
	let work: BatchWork | undefined;
	const say = (reply: Reply, transfer: ArrayBuffer[] = []) => port.postMessage(reply, transfer);
	port.onmessage = ({ data }) => {
		const order = data as Order;
		const { run } = order;
		try {
			if (order.order === "open") {
				work = new BatchWork(order.job);
				say({ reply: "ready", run, rows: work.rows });
				return;
			}
			if (work === undefined) throw new Error("no job is open");
			const piece = work.piece(order.range);
			say({ reply: "piece", run, number: order.number, piece }, [piece.values.buffer as ArrayBuffer]);
		} catch (error) {
			say({ reply: "refused", run, message: error instanceof Error ? error.message : String(error) });
		}
	};
}

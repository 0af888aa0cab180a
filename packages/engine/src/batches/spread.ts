/** The asking end: spreads the pieces of a job over several threads and hands them back in order. */
import { type BatchJob, cutJob, type Piece, type Range } from "./job.js";
import type { BatchPort, Order, Reply } from "./port.js";

/** Pieces given to one thread at a time, so that it never waits; with those not yet taken this bounds the memory. */
const AHEAD = 2;

/** Jobs spread so far. */
let runs = 0;

interface Thread {
	readonly port: BatchPort;
	/** Pieces it has been given and not handed back. */
	given: number;
}

/** All threads were lost or the job was refused. */
export class BatchError extends Error {
	constructor(message: string) {
		super(message);
		this.name = "BatchError";
	}
}

/**
 * All readings of a job, piece by piece in order, the pieces worked off by the threads behind the ports. The values
 * are bit by bit those of `workBatches`. At most three pieces per thread are in memory beside the one handed out.
 *
 * The ports' `onmessage` is taken over, and given back when the last piece is out or the caller stops early.
 * @param pieceBytes bytes of values in one piece, about
 * @throws BatchError for a job that cannot be worked on (an unknown condition), or when a thread is gone
 */
export async function* spreadBatches(
	ports: readonly BatchPort[],
	job: BatchJob,
	pieceBytes?: number,
): AsyncGenerator<Piece> {
	if (ports.length === 0) throw new RangeError("no threads to work on the job");
	let ranges: readonly Range[] | undefined;
	const threads = ports.map((port): Thread => ({ port, given: 0 }));
	const run = ++runs;
	const arrived = new Map<number, Piece>();
	let ready = 0;
	let sent = 0;
	let taken = 0;
	let failed: BatchError | undefined;
	let wake = () => {};
	const say = (thread: Thread, order: Order) => thread.port.postMessage(order, []);
	const handOut = (ranges: readonly Range[]) => {
		for (const thread of threads)
			while (thread.given < AHEAD && sent < ranges.length && sent < taken + (AHEAD + 1) * threads.length) {
				thread.given++;
				say(thread, { order: "piece", run, number: sent, range: ranges[sent]! });
				sent++;
			}
	};
	const hear = (thread: Thread, reply: Reply) => {
		if (reply.reply !== "gone" && reply.run !== run) return;
		if (reply.reply === "ready") {
			ready++;
			ranges ??= cutJob(job, reply.rows, pieceBytes);
		} else if (reply.reply === "piece") {
			arrived.set(reply.number, reply.piece);
			thread.given--;
		} else failed ??= new BatchError(reply.message);
		wake();
	};
	try {
		for (const thread of threads) {
			thread.port.onmessage = ({ data }) => hear(thread, data as Reply);
			say(thread, { order: "open", run, job });
		}
		while (ranges === undefined || taken < ranges.length) {
			if (failed) throw failed;
			if (ranges !== undefined && ready === threads.length) handOut(ranges);
			const piece = arrived.get(taken);
			if (piece === undefined) {
				await new Promise<void>((resolve) => {
					wake = resolve;
				});
				continue;
			}
			arrived.delete(taken);
			taken++;
			// The next pieces are given out before the caller takes its time over this one.
			handOut(ranges!);
			yield piece;
		}
	} finally {
		for (const { port } of threads) port.onmessage = null;
	}
}

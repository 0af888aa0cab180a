/** What is said between the thread that asks and those that work. */
import type { BatchJob, Piece, Range } from "./job.js";

/**
 * Either end of a channel to another thread: a browser's `Worker`, its `self` inside, a `MessagePort`. Node's own
 * threads need a few lines (packages/shop, `batchThreads`).
 */
export interface BatchPort {
	postMessage(message: unknown, transfer: ArrayBuffer[]): void;
	onmessage: { handle(event: { readonly data: unknown }): void }["handle"] | null;
}

/** `run` numbers the jobs that were spread, so that late answers to one that was given up are known. */
export type Order =
	| { readonly order: "open"; readonly run: number; readonly job: BatchJob }
	| { readonly order: "piece"; readonly run: number; readonly number: number; readonly range: Range };

export type Reply =
	/** The job is open; it has so many rows in each condition. */
	| { readonly reply: "ready"; readonly run: number; readonly rows: number }
	/** The job cannot be worked on. */
	| { readonly reply: "refused"; readonly run: number; readonly message: string }
	| { readonly reply: "piece"; readonly run: number; readonly number: number; readonly piece: Piece }
	/** Said by whoever keeps the thread, when it died. */
	| { readonly reply: "gone"; readonly message: string };

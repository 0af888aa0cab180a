/** The computing thread: finding faults takes seconds, and the server must answer others meanwhile. */
import type { Worker } from "node:worker_threads";
import { type InputError, InputErrors } from "../../answers/errors.js";
import { Problem } from "../problem.js";
import type { Asked, Topic } from "./asked.js";
import { startThread } from "./thread.js";

export interface Order {
	readonly number: number;
	readonly topic: Topic;
	readonly tables: Readonly<Record<string, string>>;
	readonly question: unknown;
}

/** One of `answer`, `errors` (in what was asked), `failure` (our own). */
export interface Reply {
	readonly number: number;
	readonly answer?: unknown;
	readonly errors?: readonly InputError[];
	readonly failure?: string;
}

interface Waiting {
	readonly resolve: (answer: unknown) => void;
	readonly reject: (error: Error) => void;
}

/** What the thread is told when it starts. */
export interface Told {
	readonly kept: string;
}

export class Calculator {
	#worker: Worker | undefined;
	#number = 0;
	readonly #waiting = new Map<number, Waiting>();

	/** @param kept folder of what takes long to compute; empty: nothing is kept */
	constructor(readonly kept = "") {}

	/**
	 * Computes an answer; asked again meanwhile, in the order asked.
	 * @throws InputErrors for errors in what was asked
	 */
	ask<T extends Topic>(
		topic: T,
		tables: Readonly<Record<string, string>>,
		question: Asked[T]["question"],
	): Promise<Asked[T]["answer"]> {
		this.#worker ??= this.#start();
		const number = ++this.#number;
		return new Promise((resolve, reject) => {
			this.#waiting.set(number, { resolve: resolve as (answer: unknown) => void, reject });
			this.#worker?.postMessage({ number, topic, tables, question } satisfies Order);
		});
	}

	/** Stops computing; what is under way is answered by a Problem 503. */
	async close(): Promise<void> {
		const worker = this.#worker;
		this.#giveUp(worker, new Problem(503, "the server is stopping", "Ask again when it is back."));
		await worker?.terminate();
	}

	#start(): Worker {
		const worker = startThread(new URL("./worker.ts", import.meta.url), {
			kept: this.kept,
		} satisfies Told);
		worker.on("message", (reply: Reply) => this.#settle(reply));
		worker.on("error", (error) => this.#giveUp(worker, error as Error));
		worker.on("exit", () => this.#giveUp(worker, new Error("the computing thread ended")));
		return worker;
	}

	#settle({ number, answer, errors, failure }: Reply): void {
		const waiting = this.#waiting.get(number);
		this.#waiting.delete(number);
		if (errors) waiting?.reject(new InputErrors(errors));
		else if (failure !== undefined) waiting?.reject(new Error(failure));
		else waiting?.resolve(answer);
	}

	/** The next question starts a new thread. */
	#giveUp(worker: Worker | undefined, error: Error): void {
		if (this.#worker !== worker) return;
		this.#worker = undefined;
		for (const { reject } of this.#waiting.values()) reject(error);
		this.#waiting.clear();
	}
}

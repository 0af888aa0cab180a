/**
 * Asks the engine in its worker, one call after another.
 *
 * What is no longer wanted before its turn comes is never sent: while a long search runs, only the newest
 * question waits behind it.
 */
import { EngineFault } from "./engine-fault.js";
import type { EngineCall, EngineMethods, EngineReply, MethodName } from "./protocol.js";

/** What of a `Worker` is needed; tests give a stand-in. */
export interface Port {
	postMessage(message: unknown): void;
	onmessage: ((event: MessageEvent) => void) | null;
	onerror: ((event: ErrorEvent) => void) | null;
}

interface Waiting {
	readonly call: EngineCall;
	readonly signal: AbortSignal | undefined;
	readonly resolve: (value: unknown) => void;
	readonly reject: (error: Error) => void;
}

export class EngineClient {
	readonly #port: Port;
	#queue: Waiting[] = [];
	#running: Waiting | undefined;
	#next = 1;

	constructor(port: Port) {
		this.#port = port;
		port.onmessage = ({ data }) => this.#answer(data as EngineReply);
		port.onerror = (event) => this.#failAll(event.message || "the engine's worker did not start");
	}

	/**
	 * @throws EngineFault as a rejection: bad tables, a refused question, or what the engine said
	 */
	call<M extends MethodName>(
		method: M,
		...args: Parameters<EngineMethods[M]>
	): Promise<ReturnType<EngineMethods[M]>> {
		return this.callWhileWanted(undefined, method, ...args);
	}

	/** As `call`; dropped, with a rejection, where `signal` is aborted before the worker has begun. */
	callWhileWanted<M extends MethodName>(
		signal: AbortSignal | undefined,
		method: M,
		...args: Parameters<EngineMethods[M]>
	): Promise<ReturnType<EngineMethods[M]>> {
		return new Promise((resolve, reject) => {
			const call: EngineCall = { id: this.#next++, method, args };
			this.#queue.push({ call, signal, resolve: resolve as (value: unknown) => void, reject });
			this.#proceed();
		});
	}

	#proceed(): void {
		while (this.#running === undefined) {
			const waiting = this.#queue.shift();
			if (waiting === undefined) return;
			if (waiting.signal?.aborted) {
				waiting.reject(new Error("no longer asked"));
				continue;
			}
			this.#running = waiting;
			this.#port.postMessage(waiting.call);
		}
	}

	#answer(reply: EngineReply): void {
		const running = this.#running;
		if (running?.call.id !== reply.id) return;
		this.#running = undefined;
		if (reply.ok) running.resolve(reply.value);
		else running.reject(new EngineFault(reply.fault));
		this.#proceed();
	}

	#failAll(message: string): void {
		const all = [...(this.#running ? [this.#running] : []), ...this.#queue];
		this.#running = undefined;
		this.#queue = [];
		for (const { reject } of all) reject(new EngineFault({ kind: "engine", message, errors: [] }));
	}
}

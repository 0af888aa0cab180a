/** Asks the engine in its worker: one promise per call, answered in any order. */
import { EngineFault } from "./engine-fault.js";
import type { EngineCall, EngineMethods, EngineReply, MethodName } from "./protocol.js";

/** What of a `Worker` is needed; tests give a stand-in. */
export interface Port {
	postMessage(message: unknown): void;
	onmessage: ((event: MessageEvent) => void) | null;
	onerror: ((event: ErrorEvent) => void) | null;
}

interface Waiting {
	readonly resolve: (value: unknown) => void;
	readonly reject: (error: Error) => void;
}

export class EngineClient {
	readonly #port: Port;
	readonly #waiting = new Map<number, Waiting>();
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
		const id = this.#next++;
		return new Promise((resolve, reject) => {
			this.#waiting.set(id, { resolve: resolve as (value: unknown) => void, reject });
			const call: EngineCall = { id, method, args };
			this.#port.postMessage(call);
		});
	}

	#answer(reply: EngineReply): void {
		const waiting = this.#waiting.get(reply.id);
		this.#waiting.delete(reply.id);
		if (reply.ok) waiting?.resolve(reply.value);
		else waiting?.reject(new EngineFault(reply.fault));
	}

	#failAll(message: string): void {
		for (const { reject } of this.#waiting.values())
			reject(new EngineFault({ kind: "engine", message, errors: [] }));
		this.#waiting.clear();
	}
}

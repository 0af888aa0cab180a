/** Starts engines: one for quick answers, and one apart for the long search, so that it holds nobody up. */
import { EngineClient } from "./client.js";
import type { OpenedCar } from "./protocol.js";

const startWorker = () => new Worker(new URL("./worker.ts", import.meta.url), { type: "module" });

export interface OpenEngine {
	readonly engine: EngineClient;
	readonly car: OpenedCar;
	/** The engine that searches for faults; started and given the car when first asked for. */
	finder(): EngineClient;
	/** Stops both. */
	close(): void;
}

/**
 * Opens a car.
 * @throws EngineFault as a rejection: the tables' errors by row
 */
export async function openEngine(tables: Readonly<Record<string, string>>): Promise<OpenEngine> {
	const workers = [startWorker()];
	const engine = new EngineClient(workers[0]!);
	let finder: EngineClient | undefined;
	const close = () => {
		for (const worker of workers) worker.terminate();
	};
	const car = await engine.call("open", tables).catch((error: unknown) => {
		close();
		throw error;
	});
	return {
		engine,
		car,
		finder() {
			if (finder === undefined) {
				const worker = startWorker();
				workers.push(worker);
				finder = new EngineClient(worker);
				// The same tables were opened just before, so this cannot fail otherwise than all that follows.
				finder.call("open", tables).catch(() => undefined);
			}
			return finder;
		},
		close,
	};
}

/** Starts engines: one for quick answers, and one apart for each long computation, so that it holds nobody up. */
import { EngineClient } from "./client.js";
import { type KeptSheet, keptSheet } from "./kept-sheet.js";
import type { OpenedCar } from "./protocol.js";

const startWorker = () => new Worker(new URL("./worker.ts", import.meta.url), { type: "module" });

export interface OpenEngine {
	readonly engine: EngineClient;
	readonly car: OpenedCar;
	/** The engine that searches for faults; started and given the car when first asked for. */
	finder(): EngineClient;
	/** The engine that proves, likewise. */
	prover(): EngineClient;
	/** The engine that sizes and supposes, likewise. */
	chooser(): EngineClient;
	/** The prove sheet of these tables as this tablet keeps it. */
	readonly kept: KeptSheet;
	/** Stops all. */
	close(): void;
}

/**
 * Opens a car.
 * @throws EngineFault as a rejection: the tables' errors by row
 */
export async function openEngine(tables: Readonly<Record<string, string>>): Promise<OpenEngine> {
	const workers = [startWorker()];
	const engine = new EngineClient(workers[0]!);
	const close = () => {
		for (const worker of workers) worker.terminate();
	};
	const car = await engine.call("open", tables).catch((error: unknown) => {
		close();
		throw error;
	});
	const another = () => {
		let client: EngineClient | undefined;
		return () => {
			if (client === undefined) {
				const worker = startWorker();
				workers.push(worker);
				client = new EngineClient(worker);
				// The same tables were opened just before, so this cannot fail otherwise than all that follows.
				client.call("open", tables).catch(() => undefined);
			}
			return client;
		};
	};
	return {
		engine,
		car,
		finder: another(),
		prover: another(),
		chooser: another(),
		kept: keptSheet(tables),
		close,
	};
}

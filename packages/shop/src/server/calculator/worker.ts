/** Computes answers on a thread of its own, one after another. */
import { parentPort, workerData } from "node:worker_threads";
import { inputErrors } from "../../answers/errors.js";
import { KeptFolder } from "../../kept/folder.js";
import { Cars } from "../cars.js";
import { answers, type Opened } from "./asked.js";
import type { Order, Reply, Told } from "./calculator.js";
import { EffectsKeeper } from "./effects-keeper.js";

const { kept } = workerData.told as Told;
const cars = new Cars();
const keeper = kept === "" ? undefined : new EffectsKeeper(new KeptFolder(kept));

parentPort!.on("message", async (order: Order) => {
	parentPort!.postMessage({ number: order.number, ...(await outcome(order)) });
});

async function outcome({ topic, tables, question }: Order): Promise<Omit<Reply, "number">> {
	const answer = answers[topic] as (opened: Opened, question: unknown) => unknown;
	try {
		const open = cars.open.bind(cars);
		return { answer: await answer({ car: open(tables), tables, open, keeper }, question) };
	} catch (error) {
		const errors = inputErrors(error);
		return errors
			? { errors }
			: { failure: error instanceof Error ? (error.stack ?? error.message) : String(error) };
	}
}

/** Computes answers on a thread of its own, one after another. */
import { parentPort } from "node:worker_threads";
import type { Car } from "@loomwright/engine";
import { inputErrors } from "../../answers/errors.js";
import { Cars } from "../cars.js";
import { answers } from "./asked.js";
import type { Order, Reply } from "./calculator.js";

const cars = new Cars();

parentPort!.on("message", ({ number, topic, tables, question }: Order) => {
	parentPort!.postMessage({ number, ...outcome(() => compute(topic, cars.open(tables), question)) });
});

function compute(topic: Order["topic"], car: Car, question: unknown): unknown {
	const answer = answers[topic] as (car: Car, question: unknown) => unknown;
	return answer(car, question);
}

function outcome(work: () => unknown): Omit<Reply, "number"> {
	try {
		return { answer: work() };
	} catch (error) {
		const errors = inputErrors(error);
		return errors
			? { errors }
			: { failure: error instanceof Error ? (error.stack ?? error.message) : String(error) };
	}
}

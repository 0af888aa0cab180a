/** One cold run: the demo car from its tables to a solved condition. */
import { openCar, operate } from "@loomwright/engine";
import { demoFiles } from "../demo-files.js";

/** Seconds of each stage, from the first, and sizes. */
export interface OpenRun {
	readonly opened: number;
	readonly solved: number;
	readonly wires: number;
	readonly nodes: number;
}

export function open(): OpenRun {
	const began = performance.now();
	const since = (): number => (performance.now() - began) / 1000;
	const car = openCar(demoFiles("main"));
	const opened = since();
	const circuit = car.circuit("converted");
	const [condition] = car.converted.conditions.keys();
	operate(circuit, circuit.standing(condition as string));
	return { opened, solved: since(), wires: car.converted.wires.size, nodes: circuit.nodes.length };
}

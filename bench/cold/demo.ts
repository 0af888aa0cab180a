/** One cold run over the demo car, by the functions the command line calls. Times leave out Node's own start. */
import { fileURLToPath } from "node:url";
import { openCar, operate, parseEvidence } from "@loomwright/engine";
import { findAnswer, readFolder, readText, rulesAnswer } from "@loomwright/shop";

const folder = fileURLToPath(new URL("../../demo/main/", import.meta.url));

/** Seconds from the first line of the work, and sizes. */
export interface RulesRun {
	readonly opened: number;
	readonly solved: number;
	readonly ruled: number;
	readonly wires: number;
	readonly points: number;
	readonly findings: number;
}

const stopwatch = (): (() => number) => {
	const began = performance.now();
	return () => (performance.now() - began) / 1000;
};

/** Reads the tables, applies the recipe, solves one condition, runs every rule. */
export function rules(): RulesRun {
	const since = stopwatch();
	const car = openCar(readFolder(folder).tables);
	const opened = since();
	const circuit = car.circuit("converted");
	const [condition] = car.converted.conditions.keys();
	operate(circuit, circuit.standing(condition as string));
	const solved = since();
	const { findings } = rulesAnswer(car, "converted");
	return {
		...{ opened, solved, ruled: since() },
		...{ wires: car.converted.wires.size, points: circuit.nodes.length, findings: findings.length },
	};
}

export interface FindRun {
	readonly found: number;
	readonly again: number;
	readonly hypotheses: number;
}

/** Answers the first practice case from the tables on, then once more with the car kept. */
export function find(): FindRun {
	const name = `${folder}practice/return-not-tied.json`;
	const since = stopwatch();
	const car = openCar(readFolder(folder).tables);
	const evidence = parseEvidence(readText(name), name);
	const { singles, common, pairs } = findAnswer(car, evidence).considered;
	const found = since();
	findAnswer(car, evidence);
	return { found, again: since() - found, hypotheses: singles + common + pairs };
}

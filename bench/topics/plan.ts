/** The proposal of a recipe: how good, how fast, and how it compares with one made by hand. */

import { fileURLToPath } from "node:url";
import { openCar } from "@loomwright/engine";
import { highsSolver, readFolder, transferAnswer } from "@loomwright/shop";
import type { PlanRun } from "../cold/plan.js";
import type { Figure } from "../figure.js";
import { inFreshProcesses, summarise } from "../measure.js";
import { agrees, compared } from "../planning/compare.js";

const RUNS = 3;
const CASES = 200;
const cold = new URL("../cold/plan.ts", import.meta.url);

const car = (name: string) =>
	openCar(readFolder(fileURLToPath(new URL(`../../demo/${name}/`, import.meta.url))).tables);

export async function* run(): AsyncGenerator<Figure> {
	const runs = inFreshProcesses<PlanRun>(cold, "plan", RUNS);
	const one = runs[0] as PlanRun;
	const { median, spread } = summarise(runs.map(({ seconds }) => seconds));
	yield { figure: "circuits wanted of the demo car", value: one.circuits, unit: "circuits" };
	yield { figure: "optimality gap", value: 100 * one.gap, unit: "%", goal: { below: 1 } };
	const all = "proposal, second bests, alternatives and checks";
	yield { figure: all, value: median, unit: "s", spread, goal: { below: 5 } };
	const processor = summarise(runs.map((one) => one.processor));
	yield { figure: "the same, processor time", value: processor.median, unit: "s", spread: processor.spread };
	yield {
		figure: "circuits that conduct, with nothing else joined",
		value: (100 * one.made) / one.circuits,
		unit: "%",
		goal: { atLeast: 100 },
	};
	yield { figure: "cost of the proposal", value: one.minutes, unit: "minutes", goal: { atMost: one.byHand } };
	yield { figure: "cost of the recipe made by hand, in the same prices", value: one.byHand, unit: "minutes" };
	yield { figure: "joints of the proposal", value: one.joints, unit: "joints" };
	yield { figure: "joints of the recipe made by hand", value: one.jointsByHand, unit: "joints" };
	yield { figure: "cost as an overlay loom", value: one.overlay, unit: "minutes" };
	yield { figure: "cost as a new loom", value: one.newLoom, unit: "minutes" };
	yield* small();
	const { steps, counts } = transferAnswer(car("main"), car("other-market"));
	yield { figure: "steps taken to the other market", value: steps.length, unit: "steps" };
	yield { figure: "of these, to decide", value: counts.decide, unit: "steps" };
	yield { figure: "of these, not possible there", value: counts["not here"], unit: "steps" };
}

/** Random small cars against trying everything. */
async function* small(): AsyncGenerator<Figure> {
	const solver = await highsSolver();
	let [cases, same] = [0, 0];
	for (let seed = 1; cases < CASES; seed++) {
		const one = compared(seed, solver);
		if (one === undefined || one.best === Number.POSITIVE_INFINITY) continue;
		cases++;
		same += Number(agrees(one));
	}
	const figure = `of ${CASES} random small cars, as good as trying everything`;
	yield { figure, value: (100 * same) / cases, unit: "%", goal: { atLeast: 100 } };
}

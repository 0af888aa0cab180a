/** One random small car: the proposal beside what trying everything finds. */
import type { Solver } from "@loomwright/engine";
import { Circuit } from "../../packages/engine/src/circuit/index.js";
import { readSoundTables } from "../../packages/engine/src/loom/index.js";
import type { Costs } from "../../packages/engine/src/plan/costs.js";
import { feedsOf } from "../../packages/engine/src/plan/feeds.js";
import { type Choices, choicesOf } from "../../packages/engine/src/plan/options.js";
import { type Proposal, propose } from "../../packages/engine/src/plan/propose.js";
import { readPlanTables } from "../../packages/engine/src/plan/read-plan-tables.js";
import { situation } from "../../packages/engine/src/plan/situation.js";
import { randomOf } from "../finding/random.js";
import { cheapest, wholes } from "./brute-force.js";
import { smallCase } from "./small-case.js";

/** Wholes that are still tried out one by one. */
const MOST_WHOLES = 30_000;

export interface Compared {
	readonly found: Proposal;
	/** Minutes of the cheapest of all choices, infinite where there is none. */
	readonly best: number;
	readonly all: Choices;
	readonly circuits: readonly string[];
	readonly costs: Costs;
}

/** Undefined for a car with too many choices to try. */
export function compared(seed: number, solver: Solver): Compared | undefined {
	const files = smallCase(randomOf(seed));
	const car = readSoundTables(files);
	const plan = readPlanTables(files, car);
	const circuit = new Circuit(car.delivered);
	const { at } = situation(car, plan, feedsOf(circuit));
	const all = choicesOf(at, plan.circuits, true);
	const circuits = plan.circuits.map(({ target }) => target);
	const impossible = all.hopeless.length > 0;
	if (!impossible && wholes(all, circuits) > MOST_WHOLES) return undefined;
	const best = impossible ? Number.POSITIVE_INFINITY : cheapest(all, circuits, at.costs);
	return { found: propose(car, plan, circuit, solver), best, all, circuits, costs: at.costs };
}

/** Whether the proposal costs what the best of all costs; no proposal where there is none. */
export function agrees({ found, best, costs }: Compared): boolean {
	if (found.hopeless.length > 0) return best === Number.POSITIVE_INFINITY;
	return Math.abs(found.minutes - costs.total(found.fixed) - best) < 1e-6;
}

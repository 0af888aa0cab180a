/** One random small car: the proposal beside what trying everything finds. */
import type { Solver } from "@loomwright/engine";
import { Circuit } from "../../packages/engine/src/circuit/index.js";
import { readSoundTables } from "../../packages/engine/src/loom/index.js";
import type { Costs } from "../../packages/engine/src/plan/costs.js";
import { feedsOf } from "../../packages/engine/src/plan/feeds.js";
import { finish } from "../../packages/engine/src/plan/finish.js";
import { choicesOf } from "../../packages/engine/src/plan/options.js";
import { partingsOf } from "../../packages/engine/src/plan/partings.js";
import { Pricer, priceRecipe } from "../../packages/engine/src/plan/price.js";
import { type Proposal, propose } from "../../packages/engine/src/plan/propose.js";
import { readPlanTables } from "../../packages/engine/src/plan/read-plan-tables.js";
import { situation } from "../../packages/engine/src/plan/situation.js";
import type { Option } from "../../packages/engine/src/plan/types.js";
import { randomOf } from "../finding/random.js";
import { cheapest, wholes } from "./brute-force.js";
import { smallCase } from "./small-case.js";

/** Wholes that are still tried out one by one. */
const MOST_WHOLES = 10_000;

export interface Compared {
	readonly found: Proposal;
	/** Minutes of the cheapest whole of all, infinite where there is none. */
	readonly best: number;
	/** For each choice of the proposal, minutes of the cheapest whole without it. */
	readonly seconds: readonly number[];
	readonly costs: Costs;
}

/** Undefined for a car with too many choices to try. */
export function compared(seed: number, solver: Solver): Compared | undefined {
	const files = smallCase(randomOf(seed));
	const car = readSoundTables(files);
	const plan = readPlanTables(files, car);
	const circuit = new Circuit(car.delivered);
	const feeds = feedsOf(circuit);
	const { at } = situation(car, plan, feeds);
	const circuits = plan.circuits.map(({ target }) => target);
	const members = plan.circuits.filter(({ pair }) => pair !== "");
	const pairs = [...new Set(members.map(({ pair }) => pair))].map((pair) =>
		members.filter((one) => one.pair === pair).map(({ target }) => target),
	);
	const partings = partingsOf(at, plan);
	const ways = (Array.isArray(partings) ? partings : []).map((parting) => {
		const here = situation(car, plan, feeds, parting).at;
		const { recipe, newParts } = finish(here, [], []);
		const pricer = new Pricer(here.costs, here.places, here.delivered, newParts);
		const fixed = here.costs.total(priceRecipe(pricer, recipe));
		return { ...choicesOf(here, plan.circuits, true), fixed };
	});
	const possible = ways.filter(({ hopeless }) => hopeless.length === 0);
	if (possible.reduce((sum, one) => sum + wholes(one, circuits), 0) > MOST_WHOLES) return undefined;
	const found = propose(car, plan, circuit, solver);
	const forbidden = found.choices.map(
		(choice) => (option: Option) => option.circuit === choice.circuit && option.text === choice.text,
	);
	const tried = possible.map((one) => {
		const { best, without } = cheapest(one, circuits, at.costs, pairs, forbidden);
		return [best, ...without].map((minutes) => minutes + one.fixed);
	});
	const [best, ...seconds] = [undefined, ...forbidden].map((_, k) =>
		Math.min(...tried.map((minutes) => minutes[k]!)),
	);
	return { found, best: best!, seconds, costs: at.costs };
}

/** Whether the proposal costs what the best of all costs; no proposal where there is none. */
export function agrees({ found, best }: Compared): boolean {
	if (found.hopeless.length > 0) return best === Number.POSITIVE_INFINITY;
	return Math.abs(found.minutes - best) < 1e-6;
}

import { highsSolver } from "@loomwright/shop";
import { expect, test } from "vitest";
import { Circuit } from "../../packages/engine/src/circuit/index.js";
import { readSoundTables } from "../../packages/engine/src/loom/index.js";
import { feedsOf } from "../../packages/engine/src/plan/feeds.js";
import { choicesOf } from "../../packages/engine/src/plan/options.js";
import { propose } from "../../packages/engine/src/plan/propose.js";
import { readPlanTables } from "../../packages/engine/src/plan/read-plan-tables.js";
import { situation } from "../../packages/engine/src/plan/situation.js";
import { randomOf } from "../finding/random.js";
import { cheapest, wholes } from "./brute-force.js";
import { smallCase } from "./small-case.js";

const CASES = 200;
/** Wholes that are still tried out one by one. */
const MOST_WHOLES = 30_000;

test("200 random small cases: best and second best are those of trying everything; each recipe works", async () => {
	const solver = await highsSolver();
	let [cases, possible, seconds] = [0, 0, 0];
	for (let seed = 1; cases < CASES; seed++) {
		const files = smallCase(randomOf(seed));
		const car = readSoundTables(files);
		const plan = readPlanTables(files, car);
		const circuit = new Circuit(car.delivered);
		const { at } = situation(car, plan, feedsOf(circuit));
		const all = choicesOf(at, plan.circuits, true);
		const names = plan.circuits.map(({ target }) => target);
		if (all.hopeless.length === 0 && wholes(all, names) > MOST_WHOLES) continue;
		cases++;
		const found = propose(car, plan, circuit, solver);
		const best = all.hopeless.length > 0 ? Number.POSITIVE_INFINITY : cheapest(all, names, at.costs);
		expect([seed, found.hopeless.length > 0]).toEqual([seed, best === Number.POSITIVE_INFINITY]);
		if (found.hopeless.length > 0) continue;
		possible++;
		expect(found.minutes - at.costs.total(found.fixed), `seed ${seed}`).toBeCloseTo(best, 6);
		// The recipe priced step by step is what the program counted.
		expect(at.costs.total(found.price), `seed ${seed}`).toBeCloseTo(found.minutes, 6);
		expect(found.gap, `seed ${seed}`).toBeLessThan(1e-6);
		expect([
			seed,
			found.misfits,
			found.checks.filter(({ reached, strays }) => reached === "" || strays.length > 0),
		]).toEqual([seed, [], []]);
		for (const { circuit: name, text, second } of found.choices) {
			const next = cheapest(
				all,
				names,
				at.costs,
				(option) => option.circuit === name && option.text === text,
			);
			expect(second === undefined, `seed ${seed}, ${name}`).toBe(next === Number.POSITIVE_INFINITY);
			if (second === undefined) continue;
			seconds++;
			expect(second.moreMinutes, `seed ${seed}, second of ${name}`).toBeCloseTo(next - best, 6);
		}
	}
	expect(possible).toBeGreaterThan(CASES / 2);
	expect(seconds).toBeGreaterThan(possible);
});

import { highsSolver } from "@loomwright/shop";
import { expect, test } from "vitest";
import { agrees, compared } from "./compare.js";

const CASES = 200;

test("200 random small cars: best and second best are those of trying everything; each recipe works", async () => {
	const solver = await highsSolver();
	let [possible, impossible, seconds] = [0, 0, 0];
	for (let seed = 1; possible < CASES; seed++) {
		const one = compared(seed, solver);
		if (one === undefined) continue;
		expect([seed, agrees(one)]).toEqual([seed, true]);
		const { found, best, costs } = one;
		if (found.hopeless.length > 0) {
			impossible++;
			continue;
		}
		possible++;
		// The recipe priced step by step is what the program counted.
		expect(costs.total(found.price), `seed ${seed}`).toBeCloseTo(found.minutes, 6);
		expect(found.gap, `seed ${seed}`).toBeLessThan(1e-6);
		const wrong = found.checks.filter(({ reached, strays }) => reached === "" || strays.length > 0);
		expect([seed, found.misfits, wrong]).toEqual([seed, [], []]);
		found.choices.forEach(({ circuit, second }, k) => {
			const next = one.seconds[k]!;
			expect(second === undefined, `seed ${seed}, ${circuit}`).toBe(next === Number.POSITIVE_INFINITY);
			if (second === undefined) return;
			seconds++;
			expect(second.moreMinutes, `seed ${seed}, second of ${circuit}`).toBeCloseTo(next - best, 6);
		});
	}
	expect(impossible).toBeGreaterThan(CASES / 10);
	expect(seconds).toBeGreaterThan(possible);
}, 240_000);

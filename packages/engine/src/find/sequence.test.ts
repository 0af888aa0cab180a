/**
 * Test sequencing against published systems with known optimal expected cost
 * (reference/diagnosis/sequencing.json; its sources stand in each entry's note).
 */
import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { expectedCost, planTests, type TestTable } from "./sequence.js";

interface System {
	readonly priors?: number[];
	readonly weights?: number[];
	readonly costs: number[];
	/** matrix[state][test]: 1 where the test fails. */
	readonly matrix: number[][];
	readonly optimum: number;
	readonly optimal_first_tests: number[];
}

const file = fileURLToPath(new URL("../../../../reference/diagnosis/sequencing.json", import.meta.url));
const { random_regression, ...named } = JSON.parse(readFileSync(file, "utf8")) as Record<string, System> & {
	random_regression: System[];
};

function tableOf({ priors, weights, costs, matrix }: System): TestTable {
	const given = priors ?? weights!;
	const sum = given.reduce((total, w) => total + w, 0);
	return {
		weights: given.map((w) => w / sum),
		tests: costs.map((cost, t) => ({ cost, outcomes: matrix.map((row) => row[t]!) })),
	};
}

const systems: [string, System][] = [
	...Object.entries(named as Record<string, System>),
	...random_regression.map((system, k): [string, System] => [`random ${k + 1}`, system]),
];

describe("order of tests", () => {
	it.each(systems)("%s: the known optimal expected cost", (_name, system) => {
		const table = tableOf(system);
		const plan = planTests(table);
		expect(plan.optimal).toBe(true);
		expect(plan.cost).toBeCloseTo(system.optimum, 9);
		expect(expectedCost(table)).toBeCloseTo(system.optimum, 9);
		expect(system.optimal_first_tests).toContain(plan.test + 1);
	});

	it("looks ahead where there are too many hypotheses to search, within a tenth of the optimum on a series chain", () => {
		// Half-split of 32 equally likely opens in a chain: the optimum is log2 32 = 5.
		const states = 32;
		const tests = Array.from({ length: states - 1 }, (_, t) => ({
			cost: 1,
			outcomes: Array.from({ length: states }, (_, s) => (s <= t ? 1 : 0)),
		}));
		const table: TestTable = { weights: Array.from({ length: states }, () => 1), tests };
		expect(planTests(table).optimal).toBe(false);
		expect(expectedCost(table)).toBeLessThanOrEqual(5 * 1.1);
	});
});

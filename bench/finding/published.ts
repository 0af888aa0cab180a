/** Expected cost of the planned order of tests on published systems, against their known optimum. */
import { readFileSync } from "node:fs";
import { expectedCost, type TestTable } from "../../packages/engine/src/find/sequence.js";

interface System {
	readonly priors?: number[];
	readonly weights?: number[];
	readonly costs: number[];
	/** matrix[state][test]: 1 where the test fails. */
	readonly matrix: number[][];
	readonly optimum: number;
}

/** Sources stand in each entry's note. */
const file = new URL("../../reference/diagnosis/sequencing.json", import.meta.url);

/** Cost over optimum of each system, by name; by the exhaustive search and by the look-ahead alone. */
export function overOptimum(): { name: string; planned: number; lookingAhead: number }[] {
	const { random_regression, ...named } = JSON.parse(readFileSync(file, "utf8")) as Record<string, System> & {
		random_regression: System[];
	};
	const systems: [string, System][] = [
		...Object.entries(named as Record<string, System>),
		...random_regression.map((system, k): [string, System] => [`random ${k + 1}`, system]),
	];
	return systems.map(([name, system]) => ({
		name,
		planned: expectedCost(tableOf(system)) / system.optimum,
		lookingAhead: expectedCost(tableOf(system), { exhaustive: 0 }) / system.optimum,
	}));
}

function tableOf({ priors, weights, costs, matrix }: System): TestTable {
	const given = priors ?? weights!;
	const sum = given.reduce((total, w) => total + w, 0);
	return {
		weights: given.map((w) => w / sum),
		tests: costs.map((cost, t) => ({ cost, outcomes: matrix.map((row) => row[t]!) })),
	};
}

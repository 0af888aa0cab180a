/** How long the demo car takes: each run a fresh process, so nothing is warm. */
import { execFileSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import type { FindRun, RulesRun } from "../cold/demo.js";
import type { Figure, Goal } from "../figure.js";
import { inFreshProcesses, summarise, time } from "../measure.js";

const RUNS = 5;
const cold = new URL("../cold/demo.ts", import.meta.url);
const root = fileURLToPath(new URL("../../", import.meta.url));

/** Times a whole command as built, Node's start and printing included. */
const command = (...words: string[]) =>
	time(() => execFileSync(process.execPath, ["packages/cli/dist/main.js", ...words], { cwd: root }), {
		runs: RUNS,
		warmUp: 1,
	});

function seconds<Run>(figure: string, runs: readonly Run[], pick: (run: Run) => number, goal?: Goal): Figure {
	const { median, spread } = summarise(runs.map(pick));
	return { figure, value: median, unit: "s", goal, spread };
}

export async function* run(): AsyncGenerator<Figure> {
	const rules = inFreshProcesses<RulesRun>(cold, "rules", RUNS);
	const find = inFreshProcesses<FindRun>(cold, "find", RUNS);
	const [ruled, found] = [rules[0] as RulesRun, find[0] as FindRun];
	yield { figure: "wires of the demo car as converted", value: ruled.wires, unit: "wires" };
	yield { figure: "points of its network", value: ruled.points, unit: "points" };
	yield { figure: "findings of the rules", value: ruled.findings, unit: "findings" };
	yield seconds("read the tables, apply the recipe", rules, ({ opened }) => opened);
	yield seconds("that, and one condition solved", rules, ({ solved }) => solved);
	yield seconds("that, and every rule run", rules, ({ ruled }) => ruled, { below: 1 });
	yield { figure: "faults compared by find", value: found.hypotheses, unit: "faults" };
	yield seconds("find, from the tables on", find, ({ found }) => found, { below: 2 });
	yield seconds("find, asked again of the same car", find, ({ again }) => again);
	const evidence = ["--evidence", "demo/main/practice/return-not-tied.json"];
	for (const words of [
		["rules", "demo/main", "--json"],
		["find", "demo/main", ...evidence, "--json"],
	]) {
		const { median, spread } = await command(...words);
		yield { figure: `the whole command: ${words[0]}`, value: median, unit: "s", spread };
	}
}

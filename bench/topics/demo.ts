/** How long the demo car takes, each run in a fresh process as from the command line. */
import type { OpenRun } from "../cold/open.js";
import type { Figure } from "../figure.js";
import { inFreshProcesses, summarise } from "../measure.js";

const RUNS = 5;

export async function* run(): AsyncGenerator<Figure> {
	const runs = inFreshProcesses<OpenRun>(new URL("../cold/open.ts", import.meta.url), "open", RUNS);
	const seconds = (figure: string, pick: (run: OpenRun) => number): Figure => {
		const { median, spread } = summarise(runs.map(pick));
		return { figure, value: median, unit: "s", spread };
	};
	yield { figure: "wires of the demo car as converted", value: runs[0]?.wires ?? 0, unit: "wires" };
	yield { figure: "points of its network", value: runs[0]?.nodes ?? 0, unit: "points" };
	yield seconds("demo: read the tables, apply the recipe", ({ opened }) => opened);
	yield seconds("demo: the same, and one condition solved", ({ solved }) => solved);
}

/** Figures of all readings of all single faults, and of a resistance matrix. */
import { Circuit, operate, resistanceMatrix } from "@loomwright/engine";
import type { FaultsRun } from "../cold/all-faults.js";
import type { Figure } from "../figure.js";
import { compileKlu } from "../linalg/klu.js";
import { inFreshProcesses, summarise, time } from "../measure.js";
import { loomOf, networkOf } from "./looms.js";

const module = new URL("../cold/all-faults.ts", import.meta.url);
const GIB = 2 ** 30;

export async function* faultFigures(note: (line: string) => void): AsyncGenerator<Figure> {
	const [run] = inFreshProcesses<FaultsRun>(module, "allFaults", 1);
	const { nodes, conditions, readings, ways, cold, warm, compared } = run!;
	const what = `${run!.faults} faults x ${conditions} conditions x ${readings} readings`;
	const solves = ways * conditions;
	const { median: seconds, spread } = summarise(warm.map((one) => one.seconds));
	const single = summarise(warm.map((one) => one.refactorAndSolve));
	const times = summarise(warm.map((one) => (solves * one.refactorAndSolve) / one.seconds));
	yield { figure: `${what}: ways in which the faults show themselves`, value: ways, unit: "ways" };
	yield { figure: `${what}: all, on one thread, the first time in a process`, value: cold, unit: "s" };
	yield { figure: `${what}: all, on one thread, once compiled`, value: seconds, unit: "s", spread };
	yield { figure: "a way in a condition, on average", value: seconds / solves, unit: "s" };
	yield {
		figure: `one refactor + solve of its ${nodes} points`,
		value: single.median,
		unit: "s",
		spread: single.spread,
	};
	yield {
		figure: "times faster than one refactor + solve each (sample of 1,200, scaled; both compiled)",
		value: times.median,
		unit: "",
		goal: { atLeast: 50 },
		spread: times.spread,
	};
	yield { figure: `rounds of a start-up (sample of ${compared})`, value: run!.rounds, unit: "rounds" };
	yield {
		figure: "times faster than a refactor + solve for every round of each start-up (scaled)",
		value: times.median * run!.rounds,
		unit: "",
	};
	yield {
		figure: `times faster than operate() anew each (sample of ${compared}, scaled)`,
		value: (solves * run!.anew) / seconds,
		unit: "",
	};
	const klu = compileKlu();
	if ("missing" in klu) note(`KLU comparison of all faults skipped: ${klu.missing}`);
	else {
		const network = networkOf(loomOf(nodes), "running");
		const { refactor, solve, leanRefactor, leanSolve } = klu.measure(
			network,
			new Float64Array(nodes).fill(1),
			2,
		);
		klu.close();
		const each = Math.min(refactor + solve, leanRefactor + leanSolve);
		yield {
			figure: "times faster than KLU refactoring and solving each (median, scaled)",
			value: (solves * each) / seconds,
			unit: "",
			goal: { atLeast: 1 },
		};
	}
	yield {
		figure: `${what}: peak memory of the process`,
		value: run!.peakBytes / GIB,
		unit: "GiB",
		goal: { below: 1 },
	};
	yield {
		figure: `worst relative difference from a solve anew, ${compared} ways at random, from 10 mV and 10 mohm on`,
		value: run!.worst,
		unit: "",
		goal: { below: 1e-8 },
	};
	yield {
		figure: "readings of these 'open' in one of the two only",
		value: run!.openApart,
		unit: "readings",
		goal: { atMost: 0 },
	};
	yield {
		figure: "ways of these that settle in one of the two only",
		value: run!.settleApart,
		unit: "ways",
		goal: { atMost: 0 },
	};
}

/** @param contacts how many, spread over the loom */
export async function* resistanceFigures(nodes: number, contacts: number): AsyncGenerator<Figure> {
	const loom = loomOf(nodes);
	const circuit = new Circuit(loom);
	const point = operate(circuit, circuit.standing("battery-off"), { dead: true });
	const all = [...loom.contacts.keys()];
	const at = Array.from(
		{ length: contacts },
		(_, k) => circuit.node(all[Math.floor((k * all.length) / contacts)]!)!,
	);
	const { median, spread } = await time(() => resistanceMatrix(point, at), { runs: 9, warmUp: 4 });
	yield {
		figure: `resistances between every two of ${contacts} contacts, ${circuit.nodes.length} points`,
		value: median,
		unit: "s",
		goal: { below: 0.1 },
		spread,
	};
}

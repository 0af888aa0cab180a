/** Everything about a car that a sheet is chosen from: readings offered, faults, and which catches which. */
import { type Change, type Circuit, Condensed, nodesNeeded } from "../circuit/index.js";
import { type Fault, faultsOf } from "../faults/index.js";
import { pointOf } from "../readings/index.js";
import { offer } from "./candidates.js";
import { type Detection, detect } from "./detect.js";
import { phasesOf } from "./phases.js";
import { spared } from "./restraints.js";
import type { Candidate, Phase, Provable, SheetOptions } from "./types.js";
import { type Way, waysOf } from "./ways.js";

export interface SheetQuestion extends Detection {
	readonly circuit: Circuit;
	readonly net: Condensed;
	readonly phases: readonly Phase[];
	/** The phase in which all is plugged in. */
	readonly plugged: Phase;
	readonly candidates: readonly Candidate[];
	readonly faults: readonly Fault[];
	readonly ways: readonly Way[];
	/** Changes of the condensed network, each once; `detect` counts by them. */
	readonly changes: readonly Change[];
	/** Number of the change of each way. */
	readonly changeOf: readonly number[];
	/** Number of a change of the whole circuit, where some way comes to it. */
	numberOf(change: Change): number | undefined;
	/** Which of some readings catch which further changes. */
	ask(candidates: readonly Candidate[], changes: readonly Change[]): Detection["caughtBy"];
}

export function askCar(car: Provable, options: Required<SheetOptions>): SheetQuestion {
	const { circuit, faults: all } = faultsOf(car, "converted", true);
	const faults = all.filter((fault) => fault.prior >= options.leastPrior);
	const ways = waysOf(circuit, faults, options.leastOhms);
	const known = phasesOf(circuit);
	const { phases, candidates } = offer(circuit, known);
	const net = condensed(circuit, candidates, ways);
	const numbers = new Map<Change, number>();
	const changeOf = ways.map((way) => {
		const change = net.change(way.change);
		if (!numbers.has(change)) numbers.set(change, numbers.size);
		return numbers.get(change)!;
	});
	const changes = [...numbers.keys()];
	const spare = new Map([...spared(circuit)].map(([branch, most]) => [runOf(net, branch), most]));
	return {
		circuit,
		net,
		phases,
		plugged: known.plugged,
		candidates,
		faults,
		ways,
		changes,
		changeOf,
		...detect(net, candidates, changes, spare),
		numberOf: (change) => numbers.get(net.change(change)),
		ask: (some, more) =>
			detect(
				net,
				some,
				more.map((change) => net.change(change)),
				spare,
			).caughtBy,
	};
}

/** The circuit with its runs taken together, all points that are asked about kept. */
function condensed(circuit: Circuit, candidates: readonly Candidate[], ways: readonly Way[]): Condensed {
	const keep = new Set(ways.flatMap((way) => nodesNeeded(circuit, way.change)));
	for (const { from, to } of candidates) for (const id of [from, to]) keep.add(pointOf(circuit, id));
	keep.delete(-1);
	return new Condensed(circuit, keep);
}

/** The condensed branch that a branch of the circuit went into. */
function runOf(net: Condensed, branch: number): number {
	return net.change({ branches: [{ branch, siemens: 0 }], added: [] }).branches[0]!.branch;
}

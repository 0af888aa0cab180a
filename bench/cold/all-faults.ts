/**
 * All readings of all single faults of a grown loom, cold and once compiled, and what the same would cost fault by fault.
 * Times leave out Node's own start.
 */
import {
	type BatchJob,
	type NetworkChange as Change,
	Circuit,
	CircuitError,
	faultSet,
	type Loom,
	operate,
	type Probe,
	probeValue,
	workBatches,
} from "@loomwright/engine";
import { refactor, solve } from "@loomwright/linalg";
import { startUp } from "../../packages/engine/src/circuit/operating.js";
import { loomOf } from "../circuit/looms.js";
import { seeded } from "../linalg/network-generator.js";

/** Wanted points of the loom: it then has some 20,000 single faults. */
const NODES = 8000;
const READINGS = 500;
/** The last one with the battery off, for ohms. */
const CONDITIONS = [
	..."key-off key-on cranking running lights-on reverse fan-high bus-dominant actuators-on".split(" "),
	..."brake-pressed compressor-on battery-off".split(" "),
];
const DEAD = "battery-off";
/** Runs after the first, each with its own measure of a refactor and solve. */
const WARM = 5;
/** Refactorings timed per condition. */
const REFACTORED = 100;
/** Solves anew, each with its start-up, timed and compared for at most so many seconds. */
const COMPARE_SECONDS = 45;
const SEED = 3;
/** Volts and ohms against which a difference is judged where the reading is smaller. */
const LEAST = { volts: 0.01, ohms: 0.01 };

export interface FaultsRun {
	readonly nodes: number;
	readonly faults: number;
	/** Changes of the network: every way in which each fault shows itself. */
	readonly ways: number;
	readonly conditions: number;
	readonly readings: number;
	/** For all of them, the first time in a process. */
	readonly cold: number;
	/** For all of them, once compiled, and of one refactor and one solve by the same solver, without low rank. */
	readonly warm: readonly { readonly seconds: number; readonly refactorAndSolve: number }[];
	/** Of one way solved anew with its start-up from rest, a factor and solve for every round. */
	readonly anew: number;
	/** Rounds of such a start-up, on average. */
	readonly rounds: number;
	/** Most memory of the process, in bytes. */
	readonly peakBytes: number;
	/** Ways in a condition of which every reading was compared with a solve anew. */
	readonly compared: number;
	readonly worst: number;
	/** Readings 'open' in one of the two only. */
	readonly openApart: number;
	/** Of the compared, ways that do not settle in either. */
	readonly unsettled: number;
	/** Ways that do not settle in one of the two only. */
	readonly settleApart: number;
}

export function allFaults(): FaultsRun {
	const loom = loomOf(NODES);
	const circuit = new Circuit(loom);
	const { job, faults } = jobOf(loom, circuit);
	const cold = allReadings(job, circuit, () => 0).seconds;
	const warm = Array.from({ length: WARM }, () =>
		allReadings(job, circuit, (condition) => refactorAndSolve(circuit, job.conditions[condition]!)),
	);
	const peakBytes = process.resourceUsage().maxRSS * 1024;
	const chosen = choose(job);
	return {
		nodes: circuit.nodes.length,
		faults,
		ways: job.changes.length,
		conditions: job.conditions.length,
		readings: READINGS,
		cold,
		warm,
		peakBytes,
		...compare(circuit, job, chosen, readingsOf(job, circuit, chosen)),
	};
}

function jobOf(loom: Loom, circuit: Circuit): { job: BatchJob; faults: number } {
	const none = new Map<string, readonly string[]>();
	const touched = { contacts: none, wires: none, ends: none, joints: none, connectors: none, parts: none };
	const faults = faultSet({ circuit, loom, touched, steps: new Map() });
	const contacts = [...loom.contacts.keys()];
	const at = Array.from(
		{ length: READINGS },
		(_, k) => circuit.node(contacts[Math.floor((k * contacts.length) / READINGS)]!)!,
	);
	const conditions = CONDITIONS.map((when) => {
		const dead = when === DEAD;
		const probes = at.map((a): Probe => ({ kind: dead ? "ohms" : "volts", a, b: -1 }));
		return { when, dead, probes };
	});
	const changes = faults.flatMap(({ patterns }) => patterns.map(({ change }) => change));
	return { job: { loom, conditions, changes }, faults: faults.length };
}

/** Some ways in some conditions, more than there is time to compare, in the order in which that is tried. */
function choose({
	conditions,
	changes,
}: BatchJob): Map<string, readonly [condition: number, change: number]> {
	const random = seeded(SEED);
	const pick = (count: number) => Math.floor(random() * count);
	return new Map(
		Array.from({ length: 20_000 }, () => {
			const [condition, change] = [pick(conditions.length), pick(changes.length)];
			return [`${condition} ${change}`, [condition, change]] as const;
		}),
	);
}

/**
 * Seconds of all readings of a job, and of one refactor and solve on average.
 * @param beside one in a condition, taken when that is done and not counted: both meet the same weather
 */
function allReadings(
	job: BatchJob,
	circuit: Circuit,
	beside: (condition: number) => number,
): { seconds: number; refactorAndSolve: number } {
	let readings = 0;
	let seconds = 0;
	let single = 0;
	let began = performance.now();
	for (const { condition, changes } of workBatches(job, { reuse: true, circuit })) {
		seconds += (performance.now() - began) / 1000;
		readings += changes.length * READINGS;
		if (readings === (condition + 1) * job.changes.length * READINGS) single += beside(condition);
		began = performance.now();
	}
	seconds += (performance.now() - began) / 1000;
	if (readings !== job.changes.length * job.conditions.length * READINGS)
		throw new Error("readings are missing");
	return { seconds, refactorAndSolve: single / job.conditions.length };
}

/** The readings of the chosen ways, of another run of the same job. */
function readingsOf(
	job: BatchJob,
	circuit: Circuit,
	chosen: ReadonlyMap<string, unknown>,
): Map<string, Float64Array | "unsettled"> {
	const found = new Map<string, Float64Array | "unsettled">();
	for (const { condition, changes, rows, values, failures } of workBatches(job, { reuse: true, circuit })) {
		const failed = new Set(failures.map(({ change }) => change));
		for (let k = 0; k < changes.length; k++) {
			const key = `${condition} ${changes[k]}`;
			if (!chosen.has(key)) continue;
			const from = rows[k]! * READINGS;
			found.set(key, failed.has(changes[k]!) ? "unsettled" : values.slice(from, from + READINGS));
		}
	}
	return found;
}

/** Seconds of one refactor and solve in a condition, openings here and there; links cost the same. */
function refactorAndSolve(circuit: Circuit, { when, dead }: BatchJob["conditions"][number]): number {
	const random = seeded(SEED);
	const { numeric, siemens, emf, volts } = operate(circuit, circuit.standing(when), { dead });
	const { pattern, branches } = circuit;
	const values = numeric.values.slice(0, pattern.rowIdx.length);
	const rowSums = numeric.rowSums!.slice();
	const rhs = new Float64Array(volts.length);
	branches.forEach(({ a, b }, k) => {
		if (a >= 0) rhs[a]! += siemens[k]! * emf[k]!;
		if (b >= 0) rhs[b]! -= siemens[k]! * emf[k]!;
	});
	const x = new Float64Array(rhs.length);
	const inside = [...branches.keys()].filter((k) => pattern.edge[k]! >= 0);
	let seconds = 0;
	for (let run = -20; run < REFACTORED; run++) {
		const branch = inside[Math.floor(random() * inside.length)]!;
		const edge = pattern.edge[branch]!;
		const before = values[edge]!;
		const began = performance.now();
		values[edge] = before + siemens[branch]! * 0.999;
		refactor(numeric, values, rowSums);
		x.set(rhs);
		solve(numeric, x);
		values[edge] = before;
		if (run >= 0) seconds += (performance.now() - began) / 1000;
	}
	return seconds / REFACTORED;
}

function compare(
	circuit: Circuit,
	job: BatchJob,
	chosen: ReadonlyMap<string, readonly [condition: number, change: number]>,
	found: ReadonlyMap<string, Float64Array | "unsettled">,
) {
	let [compared, worst, openApart, unsettled, settleApart, seconds, rounds] = [0, 0, 0, 0, 0, 0, 0];
	for (const [key, [condition, number]] of chosen) {
		if (seconds > COMPARE_SECONDS) break;
		const { when, dead, probes } = job.conditions[condition]!;
		const began = performance.now();
		const start = anew(circuit, when, dead, job.changes[number]!, probes);
		seconds += (performance.now() - began) / 1000;
		rounds += start?.rounds ?? 0;
		const expected = start?.values ?? "unsettled";
		const values = found.get(key)!;
		compared++;
		if (values === "unsettled" || expected === "unsettled") {
			if (values === expected) unsettled++;
			else settleApart++;
			continue;
		}
		const least = dead ? LEAST.ohms : LEAST.volts;
		expected.forEach((value, p) => {
			const own = values[p]!;
			if (Number.isNaN(own) !== Number.isNaN(value)) openApart++;
			else if (!Number.isNaN(own))
				worst = Math.max(worst, Math.abs(own - value) / Math.max(Math.abs(value), least));
		});
	}
	return {
		anew: seconds / compared,
		rounds: rounds / (compared - unsettled),
		compared,
		worst,
		openApart,
		unsettled,
		settleApart,
	};
}

function anew(
	circuit: Circuit,
	when: string,
	dead: boolean,
	change: Change,
	probes: readonly Probe[],
): { values: Float64Array; rounds: number } | undefined {
	try {
		const points = startUp(circuit, circuit.standing(when), { change, dead });
		const values = Float64Array.from(probes, (probe) => probeValue(points.at(-1)!, probe));
		return { values, rounds: points.length };
	} catch (error) {
		if (error instanceof CircuitError) return undefined;
		throw error;
	}
}

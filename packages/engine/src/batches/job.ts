/** A batch as plain data: what is to be read under which changes. It can be cloned to another thread. */
import type { Change, Circuit, Probe } from "../circuit/index.js";
import type { Loom } from "../loom/index.js";

/** How the car stands, and what is looked at in it. */
export interface BatchCondition {
	/** A condition of the loom. */
	readonly when: string;
	/** All sources dead, for ohms. */
	readonly dead: boolean;
	readonly probes: readonly Probe[];
}

/** Nodes and branches are numbered as in `new Circuit(loom, variants)`. */
export interface BatchJob {
	readonly loom: Loom;
	readonly variants?: ReadonlyMap<string, Loom>;
	readonly conditions: readonly BatchCondition[];
	readonly changes: readonly Change[];
}

/** Some changes in one condition. */
export interface Range {
	/** Number of the condition. */
	readonly condition: number;
	/** First change, and the one after the last. */
	readonly from: number;
	readonly to: number;
}

/** A change that has no readings in a condition. */
export interface Failure {
	/** Number of the change. */
	readonly change: number;
	readonly message: string;
	/** Names of the points or parts concerned; may be empty. */
	readonly where: readonly string[];
}

export interface Piece extends Range {
	/**
	 * Volts, amperes or ohms, (change - from) x probes + probe; NaN is 'open'. Of a change that failed all are NaN.
	 */
	readonly values: Float64Array;
	readonly failures: readonly Failure[];
}

/** Bytes of values in one piece, about: large enough that handing it over costs nothing, small beside the memory. */
const PIECE_BYTES = 4e6;

/** Cuts a job into pieces, condition by condition, changes in order. */
export function cutJob({ conditions, changes }: BatchJob, pieceBytes = PIECE_BYTES): Range[] {
	return conditions.flatMap(({ probes }, condition) => {
		const rows = Math.max(1, Math.floor(pieceBytes / 8 / Math.max(1, probes.length)));
		const count = Math.ceil(changes.length / rows);
		return Array.from({ length: count }, (_, k) => ({
			condition,
			from: k * rows,
			to: Math.min(changes.length, (k + 1) * rows),
		}));
	});
}

/** What is wrong with the numbers of a change; undefined when nothing is. */
export function changeProblem(circuit: Circuit, change: Change): string | undefined {
	const branches = circuit.branches.length;
	const nodes = circuit.nodes.length;
	for (const one of change.branches) {
		if (!(Number.isInteger(one.branch) && one.branch >= 0 && one.branch < branches))
			return `branch ${one.branch} is outside 0..${branches - 1}`;
		const [name, value] = "seriesOhms" in one ? ["seriesOhms", one.seriesOhms] : ["siemens", one.siemens];
		if (!(Number.isFinite(value) && value >= 0))
			return `${name} of branch ${one.branch} is ${value}; it must be a number from 0`;
	}
	for (const { a, b, siemens } of change.added) {
		for (const node of [a, b])
			if (!(Number.isInteger(node) && node >= -1 && node < nodes))
				return `node ${node} is outside -1..${nodes - 1}`;
		if (a === b) return `a conductor from node ${a} to itself`;
		if (!(Number.isFinite(siemens) && siemens > 0))
			return `siemens of the conductor from ${a} to ${b} is ${siemens}; it must be a number above 0`;
	}
	return undefined;
}

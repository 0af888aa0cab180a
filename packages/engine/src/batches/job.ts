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

/**
 * Some rows in one condition. Changes that come to the same (an opening anywhere in one run of wire and terminals) share
 * a row; rows are in the order of the network, so that those of neighbours follow each other.
 */
export interface Range {
	/** Number of the condition. */
	readonly condition: number;
	/** First row, and the one after the last. */
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
	/** Numbers of the changes whose readings these are. */
	readonly changes: Int32Array;
	/** The row of each of them, counted from the piece's first. */
	readonly rows: Int32Array;
	/** Volts, amperes or ohms, row x probes + probe; NaN is 'open'. Of a change that failed all are NaN. */
	readonly values: Float64Array;
	readonly failures: readonly Failure[];
}

/** Bytes of values in one piece, about: large enough that handing it over costs nothing, small beside the memory. */
const PIECE_BYTES = 4e6;

/** Cuts a job of so many rows into pieces, condition by condition. */
export function cutJob({ conditions }: BatchJob, rows: number, pieceBytes = PIECE_BYTES): Range[] {
	return conditions.flatMap(({ probes }, condition) => {
		const each = Math.max(1, Math.floor(pieceBytes / 8 / Math.max(1, probes.length)));
		const count = Math.ceil(rows / each);
		return Array.from({ length: count }, (_, k) => ({
			condition,
			from: k * each,
			to: Math.min(rows, (k + 1) * each),
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

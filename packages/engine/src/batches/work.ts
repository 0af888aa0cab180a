/** Works off the pieces of a job. The same code answers in Node, in a worker and in a browser. */
import {
	Batch,
	type Change,
	Circuit,
	CircuitError,
	Condensed,
	Kept,
	nodesNeeded,
	Shelf,
} from "../circuit/index.js";
import { type BatchJob, changeProblem, cutJob, type Failure, type Piece, type Range } from "./job.js";

/** One condition of a job, made ready. */
interface Ready {
	readonly condition: number;
	readonly batch: Batch | undefined;
	/** Why the sound car itself has no readings. */
	readonly failure: Omit<Failure, "change"> | undefined;
}

/** Changes that come to the same in the condensed network. */
interface Row {
	/** In the condensed network's numbers; or what is wrong with it. */
	readonly change: Change | string;
	/** Numbers of the job's changes. */
	readonly members: number[];
}

export class BatchWork {
	readonly #job: BatchJob;
	readonly #net: Condensed;
	readonly #rows: readonly Row[];
	readonly #shelf = new Shelf();
	#ready: Ready | undefined;

	/**
	 * @param circuit of the job's loom and variants
	 * @throws RangeError for an unknown condition
	 */
	constructor(job: BatchJob, circuit = new Circuit(job.loom, job.variants)) {
		this.#job = job;
		for (const { when } of job.conditions) circuit.standing(when);
		const problems = job.changes.map((change) => changeProblem(circuit, change));
		const keep = new Set<number>();
		for (const { probes } of job.conditions)
			for (const probe of probes)
				if (probe.kind !== "amps") for (const node of [probe.a, probe.b]) if (node >= 0) keep.add(node);
		job.changes.forEach((change, k) => {
			if (problems[k] === undefined) for (const node of nodesNeeded(circuit, change)) keep.add(node);
		});
		this.#net = new Condensed(circuit, keep);
		const known = new Map<Change, Row>();
		const rows: Row[] = [];
		job.changes.forEach((own, k) => {
			const change = problems[k] ?? this.#net.change(own);
			const row = typeof change === "string" ? undefined : known.get(change);
			if (row !== undefined) row.members.push(k);
			else {
				const made = { change, members: [k] };
				rows.push(made);
				if (typeof change !== "string") known.set(change, made);
			}
		});
		const place = new Map(rows.map((row) => [row, placeOf(row, this.#net)]));
		this.#rows = rows.sort((x, y) => place.get(x)! - place.get(y)!);
	}

	/** Number of rows in each condition. */
	get rows(): number {
		return this.#rows.length;
	}

	/**
	 * Readings of a piece. Going on in one condition costs nothing; another one is made ready first.
	 * @param spare an array that may be written into, if it is large enough
	 */
	piece({ condition, from, to }: Range, spare?: Float64Array): Piece {
		const { batch, failure } = this.#readyFor(condition);
		const width = this.#job.conditions[condition]!.probes.length;
		const size = (to - from) * width;
		const values = spare && spare.length >= size ? spare.subarray(0, size) : new Float64Array(size);
		const failures: Failure[] = [];
		const fail = (row: number, message: string, where: readonly string[]) => {
			values.fill(Number.NaN, (row - from) * width, (row - from + 1) * width);
			for (const change of this.#rows[row]!.members) failures.push({ change, message, where });
		};
		for (let row = from; row < to; row++) {
			const { change } = this.#rows[row]!;
			const at = (row - from) * width;
			if (typeof change === "string") fail(row, change, []);
			else if (batch === undefined) fail(row, failure!.message, failure!.where);
			else
				try {
					batch.evaluate(change, values, at);
				} catch (error) {
					const { message, where } = described(error);
					fail(row, message, where);
				}
		}
		return { condition, from, to, ...this.#membersOf(from, to), values, failures };
	}

	/** The changes of some rows, and for each its row. */
	#membersOf(from: number, to: number): { changes: Int32Array; rows: Int32Array } {
		let count = 0;
		for (let row = from; row < to; row++) count += this.#rows[row]!.members.length;
		const changes = new Int32Array(count);
		const rows = new Int32Array(count);
		let at = 0;
		for (let row = from; row < to; row++)
			for (const change of this.#rows[row]!.members) {
				changes[at] = change;
				rows[at++] = row - from;
			}
		return { changes, rows };
	}

	#readyFor(condition: number): Ready {
		if (this.#ready?.condition === condition) return this.#ready;
		// One at a time: the rows of a condition are the most that is held.
		this.#ready = undefined;
		this.#shelf.clear();
		const { when, dead, probes } = this.#job.conditions[condition]!;
		try {
			const kept = new Kept(this.#net, this.#net.standing(when), dead, this.#shelf);
			const batch = new Batch(
				kept,
				probes.map((probe) => this.#net.probe(probe)),
			);
			this.#ready = { condition, batch, failure: undefined };
		} catch (error) {
			const { message, where } = described(error);
			this.#ready = {
				condition,
				batch: undefined,
				failure: { message: `without a change: ${message}`, where },
			};
		}
		return this.#ready;
	}
}

function described(error: unknown): { message: string; where: readonly string[] } {
	if (error instanceof CircuitError) return { message: error.message, where: error.where };
	return { message: error instanceof Error ? error.message : String(error), where: [] };
}

/** Where a change is in the order in which the network is worked off; neighbours are near each other there. */
function placeOf({ change }: Row, { branches, symbolic }: Condensed): number {
	if (typeof change === "string") return -1;
	let first = symbolic.n;
	const look = ({ a, b }: { readonly a: number; readonly b: number }) => {
		for (const node of [a, b]) if (node >= 0) first = Math.min(first, symbolic.inverse[node]!);
	};
	for (const { branch } of change.branches) look(branches[branch]!);
	for (const link of change.added) look(link);
	return first;
}

export interface WorkOptions {
	/** Bytes of values in one piece, about. */
	readonly pieceBytes?: number;
	/** One array serves all pieces: for a caller who is done with one before he asks for the next. */
	readonly reuse?: boolean;
	/** Of the job's loom and variants, where the caller has it already. */
	readonly circuit?: Circuit;
}

/**
 * All readings of a job on this thread, piece by piece in order.
 * @throws RangeError for an unknown condition
 */
export function* workBatches(job: BatchJob, options: WorkOptions = {}): Generator<Piece> {
	const { pieceBytes, reuse = false, circuit } = options;
	const work = new BatchWork(job, circuit);
	let spare: Float64Array | undefined;
	for (const range of cutJob(job, work.rows, pieceBytes)) {
		const piece = work.piece(range, spare);
		if (reuse && piece.values.length >= (spare?.length ?? 0)) spare = piece.values;
		yield piece;
	}
}

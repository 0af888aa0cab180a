/** Works off the pieces of a job. The same code answers in Node, in a worker and in a browser. */
import { Batch, type Change, Circuit, CircuitError, Condensed, Kept, nodesNeeded } from "../circuit/index.js";
import { type BatchJob, changeProblem, cutJob, type Failure, type Piece, type Range } from "./job.js";

/** One condition of a job, made ready. */
interface Ready {
	readonly condition: number;
	readonly batch: Batch | undefined;
	/** Why the sound car itself has no readings. */
	readonly failure: Omit<Failure, "change"> | undefined;
}

export class BatchWork {
	readonly #job: BatchJob;
	readonly #net: Condensed;
	/** Each change in the condensed network's numbers, the same object for those that come to the same; or its problem. */
	readonly #changes: readonly (Change | string)[];
	#ready: Ready | undefined;

	/** @throws RangeError for an unknown condition */
	constructor(job: BatchJob) {
		this.#job = job;
		const circuit = new Circuit(job.loom, job.variants);
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
		this.#changes = job.changes.map((change, k) => problems[k] ?? this.#net.change(change));
	}

	/** Readings of a piece. Going on in one condition costs nothing; another one is made ready first. */
	piece({ condition, from, to }: Range): Piece {
		const { batch, failure } = this.#readyFor(condition);
		const width = this.#job.conditions[condition]!.probes.length;
		const values = new Float64Array((to - from) * width);
		const failures: Failure[] = [];
		const fail = (change: number, message: string, where: readonly string[]) => {
			values.fill(Number.NaN, (change - from) * width, (change - from + 1) * width);
			failures.push({ change, message, where });
		};
		/** First row of each change that was asked in this piece. */
		const asked = new Map<Change, number>();
		for (let k = from; k < to; k++) {
			const change = this.#changes[k]!;
			const row = (k - from) * width;
			if (typeof change === "string") fail(k, change, []);
			else if (batch === undefined) fail(k, failure!.message, failure!.where);
			else {
				const known = asked.get(change);
				if (known !== undefined) values.copyWithin(row, known, known + width);
				else
					try {
						batch.evaluate(change, values.subarray(row, row + width));
						asked.set(change, row);
					} catch (error) {
						const { message, where } = described(error);
						fail(k, message, where);
					}
			}
		}
		return { condition, from, to, values, failures };
	}

	#readyFor(condition: number): Ready {
		if (this.#ready?.condition === condition) return this.#ready;
		// One at a time: the rows of a condition are the most that is held.
		this.#ready = undefined;
		const { when, dead, probes } = this.#job.conditions[condition]!;
		try {
			const kept = new Kept(this.#net, this.#net.standing(when), dead, true);
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

/**
 * All readings of a job on this thread, piece by piece in order.
 * @param pieceBytes bytes of values in one piece, about
 * @throws RangeError for an unknown condition
 */
export function* workBatches(job: BatchJob, pieceBytes?: number): Generator<Piece> {
	const work = new BatchWork(job);
	for (const range of cutJob(job, pieceBytes)) yield work.piece(range);
}

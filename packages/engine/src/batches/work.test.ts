import { beforeAll, describe, expect, it } from "vitest";
import { Batch, Circuit, Kept } from "../circuit/index.js";
import { demoCar } from "../test-support/demo.test-helper.js";
import { type BatchJob, type Piece, workBatches } from "./index.js";
import { sampleJob } from "./sample-job.test-helper.js";

const circuit = demoCar("small").circuit("converted");
const job = sampleJob(circuit);

/** Values of all pieces by condition, and failures. */
function gathered(pieces: Iterable<Piece>, { conditions, changes }: BatchJob) {
	const values = conditions.map(({ probes }) => new Float64Array(probes.length * changes.length).fill(-1));
	const failures: string[] = [];
	for (const piece of pieces) {
		const width = conditions[piece.condition]!.probes.length;
		piece.changes.forEach((change, k) => {
			const from = piece.rows[k]! * width;
			values[piece.condition]!.set(piece.values.subarray(from, from + width), change * width);
		});
		for (const { change, message } of piece.failures)
			failures.push(`${piece.condition} ${change}: ${message}`);
	}
	return { values, failures };
}

describe("all readings of a job", () => {
	let all: ReturnType<typeof gathered>;
	beforeAll(() => {
		all = gathered(workBatches(job), job);
	});

	it("are those of full solves of the whole network, one by one", () => {
		job.conditions.forEach(({ when, dead, probes }, c) => {
			const batch = new Batch(new Kept(circuit, circuit.standing(when), dead), probes);
			job.changes.forEach((change, k) => {
				const { values } = batch.solveAnew(change);
				values.forEach((expected, p) => {
					const own = all.values[c]![k * probes.length + p]!;
					const place = `${when}, change ${k}, probe ${p}`;
					expect(Number.isNaN(own), place).toBe(Number.isNaN(expected));
					const scale = dead ? expected : 15;
					if (!Number.isNaN(own)) expect(Math.abs(own - expected), place).toBeLessThanOrEqual(1e-8 * scale);
				});
			});
		});
		expect(all.failures).toEqual([]);
	});

	it("are the same bits however the job is cut", () => {
		expect(gathered(workBatches(job, { pieceBytes: 1 }), job)).toEqual(all);
		expect(gathered(workBatches(job, { pieceBytes: 999 }), job)).toEqual(all);
		expect(
			gathered(workBatches(job, { pieceBytes: 999, reuse: true, circuit: new Circuit(job.loom) }), job),
		).toEqual(all);
	});
});

it("pieces come condition by condition, rows in order, every change once in each", () => {
	const pieces = [...workBatches(job, { pieceBytes: 2000 })];
	expect(pieces.length).toBeGreaterThan(2 * job.conditions.length);
	job.conditions.forEach(({ probes }, condition) => {
		const own = pieces.filter((piece) => piece.condition === condition);
		let next = 0;
		for (const { from, to, values } of own) {
			expect(from).toBe(next);
			next = to;
			expect(values.length).toBe((to - from) * probes.length);
		}
		const changes = own.flatMap((piece) => [...piece.changes]).sort((x, y) => x - y);
		expect(changes).toEqual([...job.changes.keys()]);
		// Openings of one run are one row.
		expect(next).toBeLessThan(job.changes.length);
	});
	expect(pieces.map(({ condition }) => condition)).toEqual(
		pieces.map(({ condition }) => condition).sort((x, y) => x - y),
	);
});

it.each([
	[{ branches: [{ branch: 1e6, siemens: 0 }], added: [] }, /branch 1000000 is outside 0\.\.\d+/],
	[
		{ branches: [{ branch: 0, siemens: -1 }], added: [] },
		"siemens of branch 0 is -1; it must be a number from 0",
	],
	[{ branches: [{ branch: 0, seriesOhms: Number.NaN }], added: [] }, "seriesOhms of branch 0 is NaN"],
	[{ branches: [], added: [{ a: 0, b: -2, siemens: 1 }] }, /node -2 is outside -1\.\.\d+/],
	[{ branches: [], added: [{ a: 3, b: 3, siemens: 1 }] }, "a conductor from node 3 to itself"],
	[{ branches: [], added: [{ a: 0, b: -1, siemens: 0 }] }, "must be a number above 0"],
])("a change with wrong numbers fails by itself: %j", (wrong, message) => {
	const changes = [job.changes[0]!, wrong, job.changes[1]!];
	const conditions = job.conditions.slice(0, 1);
	const own = { ...job, conditions, changes };
	const found = gathered(workBatches(own), own);
	expect(found.failures).toEqual([expect.stringMatching(/^0 1: /)]);
	expect(found.failures[0]).toMatch(message);
	const width = conditions[0]!.probes.length;
	const [values] = found.values;
	expect(values!.subarray(width, 2 * width).every(Number.isNaN)).toBe(true);
	const both = { ...own, changes: job.changes.slice(0, 2) };
	const [sound] = gathered(workBatches(both), both).values;
	expect(values!.subarray(0, width)).toEqual(sound!.subarray(0, width));
	expect(values!.subarray(2 * width)).toEqual(sound!.subarray(width));
});

it("an unknown condition is refused before anything is worked on", () => {
	const conditions = [{ when: "no-such", dead: false, probes: [] }];
	expect(() => workBatches({ ...job, conditions }).next()).toThrow(/no condition 'no-such'; this car has: /);
});

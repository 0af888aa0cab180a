import { type BatchJob, type BatchPiece, openCar, spreadBatches, workBatches } from "@loomwright/engine";
import { expect, onTestFinished, test } from "vitest";
import { readFolder } from "../folder/read-folder.js";
import { SMALL_CAR } from "../server/server.test-helper.js";
import { batchThreads } from "./threads.js";

const car = openCar(readFolder(SMALL_CAR).tables);
const circuit = car.circuit("converted");
const contacts = [...car.converted.contacts.keys()].map((id) => circuit.node(id)!);
const job: BatchJob = {
	loom: car.converted,
	changes: circuit.branches.flatMap((_, branch) => [
		{ branches: [{ branch, siemens: 0 }], added: [] },
		{ branches: [{ branch, seriesOhms: 30 }], added: [] },
	]),
	conditions: [
		{ when: "key-on", dead: false, probes: contacts.map((a) => ({ kind: "volts", a, b: -1 })) },
		{ when: "battery-off", dead: true, probes: contacts.map((a) => ({ kind: "ohms", a, b: contacts[0]! })) },
	],
};

/** Small, so that each thread has several. */
const PIECE = 8_000;

function threads(count: number) {
	const own = batchThreads(count);
	onTestFinished(() => own.close());
	return own;
}

test("two threads give what one does, to the bit and in order", async () => {
	const { ports } = threads(2);
	const pieces: BatchPiece[] = [];
	for await (const piece of spreadBatches(ports, job, PIECE)) pieces.push(piece);
	expect(pieces.length).toBeGreaterThan(8);
	const expected = [...workBatches(job, { pieceBytes: PIECE })];
	expect(pieces).toEqual(expected);
	pieces.forEach((piece, k) => {
		// Not only equal as numbers: zeros of either sign are kept apart.
		expect(Buffer.from(piece.values.buffer).equals(Buffer.from(expected[k]!.values.buffer))).toBe(true);
	});
});

test("a change that fails in a thread is named, the others have their readings", async () => {
	const changes = job.changes.slice(0, 60);
	const bad = { branches: [{ branch: 1e9, siemens: 0 }], added: [] };
	const failures: number[] = [];
	let rows = 0;
	for await (const piece of spreadBatches(threads(2).ports, { ...job, changes: [...changes, bad] }, PIECE)) {
		failures.push(...piece.failures.map(({ change }) => change));
		rows += piece.changes.length;
	}
	expect([failures, rows]).toEqual([[60, 60], 122]);
});

test("a thread that is ended ends the job that waits for it", async () => {
	const { ports, close } = threads(1);
	const work = (async () => {
		for await (const _piece of spreadBatches(ports, job, PIECE)) await close();
	})();
	await expect(work).rejects.toThrow("a batch thread ended");
});

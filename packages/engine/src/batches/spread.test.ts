import { MessageChannel, type MessagePort } from "node:worker_threads";
import { expect, it, onTestFinished } from "vitest";
import { demoCar } from "../test-support/demo.test-helper.js";
import { type BatchPort, type Piece, serveBatches, spreadBatches, workBatches } from "./index.js";
import { sampleJob } from "./sample-job.test-helper.js";

const job = sampleJob(demoCar("small").circuit("converted"));
const PIECE = 3000;

/** What the two ends of a channel have said to each other. */
function channel(serve = serveBatches) {
	const { port1, port2 } = new MessageChannel();
	onTestFinished(() => port1.close());
	serve(batchPort(port2));
	return batchPort(port1);
}

function batchPort(port: MessagePort): BatchPort {
	const own: BatchPort = {
		postMessage: (message, transfer) => port.postMessage(message, transfer),
		onmessage: null,
	};
	port.on("message", (data) => own.onmessage?.({ data }));
	return own;
}

async function gathered(pieces: AsyncIterable<Piece>): Promise<Piece[]> {
	const all: Piece[] = [];
	for await (const piece of pieces) all.push(piece);
	return all;
}

it.each([1, 2, 5])("%i ports give the pieces of one thread, in order, to the bit", async (count) => {
	const ports = Array.from({ length: count }, () => channel());
	expect(await gathered(spreadBatches(ports, job, PIECE))).toEqual([
		...workBatches(job, { pieceBytes: PIECE }),
	]);
});

it("keeps the order when one thread is slow, and never runs far ahead", async () => {
	let handedOut = 0;
	let most = 0;
	let taken = 0;
	const counted = (delay: number) => {
		const inner = channel();
		const outer: BatchPort = {
			postMessage(message, transfer) {
				if ((message as { order: string }).order === "piece") most = Math.max(most, ++handedOut - taken);
				setTimeout(() => inner.postMessage(message, transfer), delay);
			},
			onmessage: null,
		};
		inner.onmessage = (event) => outer.onmessage?.(event);
		return outer;
	};
	const expected = [...workBatches(job, { pieceBytes: PIECE })];
	const all: Piece[] = [];
	for await (const piece of spreadBatches([counted(5), counted(0)], job, PIECE)) {
		taken++;
		all.push(piece);
	}
	expect(all).toEqual(expected);
	// Three pieces a thread, and the one being taken.
	expect(most).toBeLessThanOrEqual(7);
	expect(expected.length).toBeGreaterThan(14);
});

it("an error in one piece comes with its change; all others have their readings", async () => {
	const bad = 7;
	const changes = job.changes.map((change, k) =>
		k === bad ? { branches: [{ branch: -1, siemens: 0 }], added: [] } : change,
	);
	const pieces = await gathered(spreadBatches([channel(), channel()], { ...job, changes }, PIECE));
	const failures = pieces.flatMap((piece) =>
		piece.failures.map((failure) => ({ ...failure, condition: piece.condition })),
	);
	expect(failures).toEqual(
		job.conditions.map((_, condition) => ({
			condition,
			change: bad,
			message: expect.stringMatching(/^branch -1 is outside 0\.\.\d+$/),
			where: [],
		})),
	);
	const sound = rowsByChange([...workBatches(job, { pieceBytes: PIECE })]);
	rowsByChange(pieces).forEach((row, key) => {
		const failed = key.endsWith(` ${bad}`);
		expect(row, key).toEqual(failed ? row.map(() => Number.NaN) : sound.get(key));
	});
});

/** Readings by condition and change. */
function rowsByChange(pieces: readonly Piece[]): Map<string, Float64Array> {
	const found = new Map<string, Float64Array>();
	for (const { condition, changes, rows, values } of pieces) {
		const width = job.conditions[condition]!.probes.length;
		changes.forEach((change, k) => {
			found.set(`${condition} ${change}`, values.slice(rows[k]! * width, (rows[k]! + 1) * width));
		});
	}
	return found;
}

it("a job that cannot be worked on is refused with why", async () => {
	const conditions = [{ when: "no-such", dead: false, probes: [] }];
	const pieces = spreadBatches([channel()], { ...job, conditions }, PIECE);
	await expect(gathered(pieces)).rejects.toMatchObject({
		name: "BatchError",
		message: expect.stringMatching(/^no condition 'no-such'; this car has: /),
	});
	await expect(gathered(spreadBatches([], job))).rejects.toThrow("no threads to work on the job");
});

it("given up early, the same ports serve another job", async () => {
	const ports = [channel(), channel()];
	for await (const piece of spreadBatches(ports, job, PIECE)) if (piece.from > 0) break;
	const changes = job.changes.slice(0, 40);
	const next = { ...job, changes };
	expect(await gathered(spreadBatches(ports, next, PIECE))).toEqual([
		...workBatches(next, { pieceBytes: PIECE }),
	]);
});

it("a thread that dies ends the job with its last words", async () => {
	const port = channel((inner) => {
		inner.onmessage = () => inner.postMessage({ reply: "gone", message: "out of memory" }, []);
	});
	await expect(gathered(spreadBatches([port], job, PIECE))).rejects.toThrow("out of memory");
});

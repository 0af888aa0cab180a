/** One job for all hosts: every fault of a car live, and its openings with the battery off. */
import { type BatchJob, type BatchPiece, faultSet, openCar } from "@loomwright/engine";

/** Bytes of a piece: small, so that each thread has several. */
export const PIECE = 8_000;

export function jobOf(tables: Readonly<Record<string, string>>): BatchJob {
	const car = openCar(tables);
	const loom = car.converted;
	const circuit = car.circuit("converted");
	const nodes = [...loom.contacts.keys()].map((id) => circuit.node(id)!);
	const faults = faultSet({ circuit, loom, touched: car.touched, steps: new Map() });
	return {
		loom,
		changes: faults.flatMap(({ patterns }) => patterns.map(({ change }) => change)),
		conditions: [
			{ when: "key-on", dead: false, probes: nodes.map((a) => ({ kind: "volts", a, b: -1 })) },
			{ when: "battery-off", dead: true, probes: nodes.map((a) => ({ kind: "ohms", a, b: nodes[0]! })) },
		],
	};
}

/** Where a piece lies, and all its bits in one number of 32 (FNV-1a, IETF draft-eastlake-fnv). */
export function printOf({ condition, from, to, changes, values, failures }: BatchPiece): string {
	let hash = 0x811c9dc5;
	for (const byte of new Uint8Array(values.buffer, values.byteOffset, values.byteLength))
		hash = Math.imul(hash ^ byte, 0x01000193) >>> 0;
	return `${condition} ${from}-${to} ${changes.join()} ${failures.length} ${hash.toString(16)}`;
}

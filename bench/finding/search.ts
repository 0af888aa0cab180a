/**
 * One search as a technician goes through it: takes the readings that the finder suggests until it is settled, repeats
 * the entries that it says do not fit, reseats what it says to.
 */
import type { Evidence, Finder, Found, Occasion } from "../../packages/engine/src/index.js";
import type { SimulatedCar } from "./simulated-car.js";

/** Readings after which one gives up. */
const MOST_READINGS = 25;
/** Reseatings and repeats in one search. */
const MOST_ACTIONS = 2;
const MOST_REPEATS = 2;
/** Belief in the first from which nothing is reseated any more. */
const SURE = 0.9;

/** An occasion on which one reading is taken once more. */
const NOTHING = { note: "", reseated: "", codes: undefined, units: [], functions: {}, bench: {} };

export interface Search {
	readonly found: Found;
	readonly readings: number;
	/** Bits to find out before the first reading. */
	readonly bits: number;
	readonly evidence: Evidence;
}

/** @param misread chance that a reading written down has nothing to do with the circuit */
export function search(finder: Finder, car: SimulatedCar, first: Occasion, misread = 0): Search {
	const occasions: Occasion[] = [first];
	const evidence = (): Evidence => ({ title: "", of: "converted", occasions });
	let found = finder.find(evidence());
	const { bits } = found;
	let readings = 0;
	let actions = 0;
	let repeats = 0;
	for (;;) {
		const action = found.actions.find(({ kind }) => kind !== "swap");
		if (!found.settled && found.next !== undefined && readings < MOST_READINGS) {
			const taken = car.reading(found.next.question, misread);
			const last = occasions.at(-1)!;
			if (found.next.again) occasions.push({ ...NOTHING, readings: [taken] });
			else occasions[occasions.length - 1] = { ...last, readings: [...last.readings, taken] };
			readings++;
		} else if (found.repeat.length > 0 && repeats < MOST_REPEATS) {
			const again = repeated(car, found, misread);
			readings += again.readings.length;
			occasions.push(again);
			repeats++;
		} else if (action !== undefined && (found.faults[0]?.posterior ?? 0) < SURE && actions < MOST_ACTIONS) {
			car.reseat(action.part);
			occasions.push(car.seen(action.part));
			actions++;
		} else break;
		found = finder.find(evidence());
	}
	return { found, readings, bits, evidence: evidence() };
}

/** The entries that do not fit, looked at once more. */
function repeated(car: SimulatedCar, { repeat }: Found, misread: number): Occasion {
	const seen = car.seen();
	const tried = new Set(repeat.flatMap(({ entry }) => (entry.kind === "function" ? [entry.function] : [])));
	const read = repeat.some(({ entry }) => entry.kind === "code" || entry.kind === "unit");
	return {
		...seen,
		codes: read ? seen.codes : undefined,
		functions: Object.fromEntries(Object.entries(seen.functions).filter(([name]) => tried.has(name))),
		readings: repeat.flatMap(({ entry }) =>
			entry.kind === "reading" ? [car.reading(entry.question, misread)] : [],
		),
	};
}

/** One search as a technician goes through it: takes what the finder suggests until it says that it is settled. */
import type { Evidence, Finder, Found, Occasion } from "@loomwright/engine";
import type { SimulatedCar } from "./simulated-car.js";

/** Readings after which one gives up. */
const MOST_READINGS = 25;
/** Reseatings in one search. */
const MOST_ACTIONS = 2;

export interface Search {
	readonly found: Found;
	readonly readings: number;
	readonly actions: number;
	/** Bits to find out before the first reading. */
	readonly bits: number;
	readonly evidence: Evidence;
}

export function search(finder: Finder, car: SimulatedCar, first: Occasion, misread = 0): Search {
	const occasions: Occasion[] = [first];
	const evidence = (): Evidence => ({ title: "", of: "converted", occasions });
	let found = finder.find(evidence());
	const { bits } = found;
	let readings = 0;
	let actions = 0;
	for (;;) {
		if (!found.settled && found.next !== undefined && readings < MOST_READINGS) {
			const taken = car.reading(found.next.question, misread);
			const last = occasions.at(-1)!;
			occasions[occasions.length - 1] = { ...last, readings: [...last.readings, taken] };
			readings++;
		} else if (
			found.faults[0] &&
			found.faults[0].posterior < 0.9 &&
			found.actions[0] &&
			actions < MOST_ACTIONS
		) {
			const { part } = found.actions[0];
			car.reseat(part);
			occasions.push(car.seen(part));
			actions++;
		} else break;
		found = finder.find(evidence());
	}
	return { found, readings, actions, bits, evidence: evidence() };
}

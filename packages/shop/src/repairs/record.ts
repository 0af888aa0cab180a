/** What the shop's own repairs add up to, out of the histories of all its jobs. */
import type { ShopRecord } from "@loomwright/engine";
import { jobState } from "../people/state.js";
import type { Entry } from "../store/entry/append.js";

/** Kinds of entries that say it. */
export const RECORD_KINDS = ["repair", "acceptance", "step", "correction"] as const;

/** A repair as it was entered. */
export interface EnteredRepair {
	/** Id of the entry. */
	readonly entry: string;
	readonly job: string;
	/** Id of the fault, as finding names it. */
	readonly fault: string;
	readonly kind: string;
	readonly where: string;
	/** Steps of the recipe that had worked on it. */
	readonly steps: readonly string[];
	/** Who had done them; empty: not known, or nobody. */
	readonly worked: string;
	/** Who found it. */
	readonly person: string;
	readonly time: string;
	/** Id of the correction that took it out; empty: it counts. */
	readonly takenBack: string;
}

export interface ShopRepairs {
	readonly cars: number;
	readonly work: ShopRecord["work"];
	/** In order of job and history, those taken back too. */
	readonly repairs: readonly EnteredRepair[];
}

/**
 * A car counts from the first repair on, or once it is accepted: until then it may have faults that nobody looked for.
 * @param jobs entries of these kinds, in order, by job
 */
export function repairsOf(jobs: ReadonlyMap<string, readonly Entry[]>): ShopRepairs {
	const repairs: EnteredRepair[] = [];
	const work = new Map<string, number>();
	let cars = 0;
	for (const [job, entries] of jobs) {
		const { corrected, accepted } = jobState(entries);
		const own = entries.flatMap((entry): EnteredRepair[] => {
			if (entry.kind !== "repair") return [];
			const { id, person, time, body } = entry;
			return [{ entry: id, job, ...body, person, time, takenBack: corrected[id] ?? "" }];
		});
		repairs.push(...own);
		if (accepted.length === 0 && own.every(({ takenBack }) => takenBack !== "")) continue;
		cars++;
		const doers = [...doneBy(entries).values()];
		for (const person of doers) work.set(person, (work.get(person) ?? 0) + 1 / doers.length);
	}
	return { cars, work: [...work].map(([person, cars]) => ({ person, cars })), repairs };
}

/** Who did each step of the recipe, by its number: whoever said so last and did not take it back. */
export function doneBy(entries: readonly Entry[]): ReadonlyMap<string, string> {
	const found = new Map<string, string>();
	for (const { step, done } of jobState(entries).steps) {
		const number = /^recipe\/(.*)$/.exec(step)?.[1];
		const last = done.at(-1);
		if (number !== undefined && last) found.set(number, last.person);
	}
	return found;
}

/** As finding counts it. */
export const recordOf = ({ cars, work, repairs }: ShopRepairs): ShopRecord => ({
	cars,
	work,
	repairs: repairs
		.filter(({ takenBack }) => takenBack === "")
		.map(({ kind, steps, worked }) => ({ kind, touched: steps.length > 0, person: worked })),
});

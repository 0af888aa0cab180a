/**
 * The shop's own repairs, counted, against the chances that the tables give.
 *
 * A kind's chance is the table's times a factor; the factor has a gamma prior of mean 1 that weighs as much as one
 * fault, and faults found are Poisson: after F faults where E were to be expected it is (1 + F) / (1 + E)
 * (A. Gelman et al., 'Bayesian Data Analysis', Poisson model with exposures, from memory). A person's factor likewise,
 * of what the kinds leave. Nothing is kept but the list of repairs: one taken back leaves no trace.
 */
import type { Touched } from "../recipe/index.js";
import type { Fault } from "./types.js";

/** One look at how some work or some old parts turned out. */
export interface Repair {
	readonly id: string;
	/** A kind of fault, as `Fault.kind`. */
	readonly kind: string;
	/** Whether hands had been on the items. */
	readonly touched: boolean;
	/** Who did the work; empty: not known, or nobody. */
	readonly person: string;
	/** Faults of the kind found. */
	readonly found: number;
	/** Items that could have had it: contacts, wires, steps. */
	readonly exposures: number;
}

/** How often a kind of fault turned up, against the tables. */
export interface KindRate {
	readonly kind: string;
	readonly touched: boolean;
	readonly found: number;
	readonly exposures: number;
	/** Faults to be expected among so many, by the tables. */
	readonly expected: number;
	/** By which the tables' chance is multiplied. */
	readonly factor: number;
	/** Chance per item, so multiplied; the mean over the car's items. */
	readonly chance: number;
}

export interface PersonRate {
	readonly person: string;
	readonly found: number;
	readonly expected: number;
	readonly factor: number;
}

export interface ShopRates {
	/** Kinds that repairs were counted for, in their order. */
	readonly kinds: readonly KindRate[];
	readonly people: readonly PersonRate[];
}

/** Faults that the tables' chances weigh as much as. */
const PRIOR_FAULTS = 1;
/** No count makes a fault likelier than this. */
const MOST = 0.5;

const keyOf = (kind: string, touched: boolean) => `${kind}|${touched}`;

/** (a + F) / (a + E). */
function factorOf(found: number, expected: number): number {
	return (PRIOR_FAULTS + found) / (PRIOR_FAULTS + expected);
}

/**
 * @param faults the fault set of a car, for the tables' chances
 * @param touched what the recipe worked on there
 * @throws RangeError where a repair's counts are no counts, or its kind is none of the set's
 */
export function ratesFrom(faults: readonly Fault[], touched: Touched, repairs: readonly Repair[]): ShopRates {
	if (repairs.length === 0) return { kinds: [], people: [] };
	const tables = new Map<string, { sum: number; count: number }>();
	const known = new Set<string>();
	for (const fault of faults) {
		known.add(fault.kind);
		const key = keyOf(fault.kind, stepsOf(fault, touched).length > 0);
		const row = tables.get(key) ?? { sum: 0, count: 0 };
		tables.set(key, { sum: row.sum + fault.prior, count: row.count + 1 });
	}
	const chanceOf = (kind: string, hands: boolean) => {
		const row = tables.get(keyOf(kind, hands)) ?? tables.get(keyOf(kind, !hands));
		return row === undefined ? 0 : row.sum / row.count;
	};
	const counts = new Map<string, { kind: string; touched: boolean; found: number; exposures: number }>();
	for (const { id, kind, touched: hands, found, exposures } of repairs) {
		if (!known.has(kind))
			throw new RangeError(`repair ${id}: no kind of fault '${kind}'; known: ${[...known].join(", ")}`);
		if (![found, exposures].every((n) => Number.isInteger(n) && n >= 0) || found > exposures)
			throw new RangeError(
				`repair ${id}: ${found} found of ${exposures}; wanted: whole numbers, no more found than there were`,
			);
		const row = counts.get(keyOf(kind, hands)) ?? { kind, touched: hands, found: 0, exposures: 0 };
		row.found += found;
		row.exposures += exposures;
		counts.set(keyOf(kind, hands), row);
	}
	const kinds = [...counts.values()].map((row): KindRate => {
		const chance = chanceOf(row.kind, row.touched);
		const expected = chance * row.exposures;
		const factor = factorOf(row.found, expected);
		return { ...row, expected, factor, chance: Math.min(MOST, chance * factor) };
	});
	return { kinds, people: peopleOf(kinds, repairs) };
}

function peopleOf(kinds: readonly KindRate[], repairs: readonly Repair[]): PersonRate[] {
	const rates = new Map(kinds.map((rate) => [keyOf(rate.kind, rate.touched), rate]));
	const people = new Map<string, { found: number; expected: number }>();
	for (const { person, kind, touched, found, exposures } of repairs) {
		if (person === "" || !touched) continue;
		const row = people.get(person) ?? { found: 0, expected: 0 };
		row.found += found;
		row.expected += exposures * rates.get(keyOf(kind, touched))!.chance;
		people.set(person, row);
	}
	return [...people].map(([person, { found, expected }]) => ({
		...{ person, found, expected },
		factor: factorOf(found, expected),
	}));
}

/**
 * The faults with their chances by the shop's own counts.
 * @param doneBy who did each step of the recipe
 */
export function withRates(
	faults: readonly Fault[],
	touched: Touched,
	{ kinds, people }: ShopRates,
	doneBy: ReadonlyMap<string, string> = new Map(),
): readonly Fault[] {
	if (kinds.length === 0) return faults;
	const byKind = new Map(kinds.map((rate) => [keyOf(rate.kind, rate.touched), rate.factor]));
	const byPerson = new Map(people.map(({ person, factor }) => [person, factor]));
	return faults.map((fault) => {
		const steps = stepsOf(fault, touched);
		const hands = new Set(steps.flatMap((step) => doneBy.get(step) ?? []));
		let factor = byKind.get(keyOf(fault.kind, steps.length > 0)) ?? 1;
		for (const person of hands) factor *= byPerson.get(person) ?? 1;
		return factor === 1 ? fault : { ...fault, prior: Math.min(MOST, fault.prior * factor) };
	});
}

/** Steps of the recipe that worked on what a fault concerns. */
function stepsOf({ id, kind, path }: Fault, touched: Touched): readonly string[] {
	const [, step] = /^step [^:]+:([^@]+)/.exec(id) ?? [];
	if (kind.startsWith("step ") && step !== undefined) return [step];
	const steps = new Set<string>();
	for (const at of path)
		for (const log of [touched.contacts, touched.wires, touched.joints, touched.connectors, touched.parts])
			for (const step of log.get(at) ?? []) steps.add(step);
	return [...steps];
}

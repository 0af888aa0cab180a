/**
 * The shop's own repairs, counted, against the chances that the tables give.
 *
 * A kind's chance is the table's times a factor; the factor has a gamma prior of mean 1 that weighs as much as one
 * fault, and faults found are Poisson: after F faults where E were to be expected it is (1 + F) / (1 + E)
 * (A. Gelman et al., 'Bayesian Data Analysis', Poisson model with exposures, from memory). A person's factor likewise,
 * of what the kinds leave. What was to be expected is what the tables say of this car, times the cars: a shop's cars
 * are taken to be alike. Nothing is kept but the list of repairs: one taken back leaves no trace.
 */
import type { Touched } from "../recipe/index.js";
import type { Fault } from "./types.js";

/** A fault that was found and mended. */
export interface Repair {
	/** A kind of fault, as `Fault.kind`; kinds that this car's set has not are counted and change nothing. */
	readonly kind: string;
	/** Whether hands had been on it. */
	readonly touched: boolean;
	/** Whose hands; empty: not known, or nobody's. */
	readonly person: string;
}

/** What the shop has seen. */
export interface ShopRecord {
	/** Cars whose faults were found, or that were accepted without one. */
	readonly cars: number;
	readonly repairs: readonly Repair[];
	/** Who did the work on them: shares of a car's recipe, added up. */
	readonly work: readonly { readonly person: string; readonly cars: number }[];
}

/** How often a kind of fault turned up, against the tables. */
export interface KindRate {
	readonly kind: string;
	readonly touched: boolean;
	readonly found: number;
	/** Things on this car that could have it: contacts, wires, steps. */
	readonly items: number;
	/** Faults to be expected on all the cars, by the tables. */
	readonly expected: number;
	/** By which the tables' chance is multiplied. */
	readonly factor: number;
	/** Chance of each thing by the tables, the mean over this car's. */
	readonly before: number;
	/** The same, so multiplied. */
	readonly after: number;
}

export interface PersonRate {
	readonly person: string;
	readonly found: number;
	readonly expected: number;
	readonly factor: number;
}

export interface ShopRates {
	readonly cars: number;
	/** Every kind of this car's faults, touched and not, and those that repairs name besides. */
	readonly kinds: readonly KindRate[];
	readonly people: readonly PersonRate[];
}

/** Faults that the tables' chances weigh as much as. */
const PRIOR_FAULTS = 1;
/** No count makes a fault likelier than this. */
const MOST = 0.5;

export const NO_RECORD: ShopRecord = { cars: 0, repairs: [], work: [] };

const keyOf = (kind: string, touched: boolean) => `${kind}|${touched}`;

/** (a + F) / (a + E). */
function factorOf(found: number, expected: number): number {
	return (PRIOR_FAULTS + found) / (PRIOR_FAULTS + expected);
}

/**
 * @param faults the fault set of a car, for the tables' chances
 * @param touched what the recipe worked on there
 * @throws RangeError where the cars are no count, or repairs came without one
 */
export function ratesFrom(faults: readonly Fault[], touched: Touched, record: ShopRecord): ShopRates {
	const { cars, repairs, work } = record;
	if (!Number.isInteger(cars) || cars < 0 || (cars === 0 && repairs.length > 0))
		throw new RangeError(`${repairs.length} repairs on ${cars} cars; wanted: a whole number of cars`);
	for (const { person, cars: share } of work)
		if (!(share >= 0)) throw new RangeError(`${person} worked on ${share} cars; wanted: 0 or more`);
	if (cars === 0) return { cars, kinds: [], people: [] };
	const rows = new Map<
		string,
		{ kind: string; touched: boolean; found: number; items: number; sum: number }
	>();
	const rowOf = (kind: string, hands: boolean) => {
		const row = rows.get(keyOf(kind, hands)) ?? { kind, touched: hands, found: 0, items: 0, sum: 0 };
		rows.set(keyOf(kind, hands), row);
		return row;
	};
	for (const fault of faults) {
		const row = rowOf(fault.kind, stepsOf(fault, touched).length > 0);
		row.items++;
		row.sum += fault.prior;
	}
	for (const repair of repairs) rowOf(repair.kind, repair.touched).found++;
	const kinds = [...rows.values()].map(({ sum, ...row }): KindRate => {
		const expected = cars * sum;
		const factor = row.items === 0 ? 1 : factorOf(row.found, expected);
		const before = row.items === 0 ? 0 : sum / row.items;
		return { ...row, expected, factor, before, after: Math.min(MOST, before * factor) };
	});
	return { cars, kinds, people: peopleOf(kinds, record) };
}

/** A person's faults against those to be expected of as much work by anyone of this shop. */
function peopleOf(kinds: readonly KindRate[], { repairs, work }: ShopRecord): PersonRate[] {
	const perCar = kinds
		.filter(({ touched }) => touched)
		.reduce((sum, { after, items }) => sum + after * items, 0);
	const people = new Map(work.map(({ person, cars }) => [person, { found: 0, expected: cars * perCar }]));
	for (const { person, touched } of repairs) {
		if (person === "" || !touched) continue;
		const row = people.get(person) ?? { found: 0, expected: 0 };
		people.set(person, { ...row, found: row.found + 1 });
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
export function stepsOf({ id, kind, path }: Fault, touched: Touched): readonly string[] {
	const [, step] = /^step [^:]+:([^@]+)/.exec(id) ?? [];
	if (kind.startsWith("step ") && step !== undefined) return [step];
	const steps = new Set<string>();
	for (const at of path)
		for (const log of [touched.contacts, touched.wires, touched.joints, touched.connectors, touched.parts])
			for (const step of log.get(at) ?? []) steps.add(step);
	return [...steps];
}

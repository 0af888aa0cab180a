/** Searches on the demo car, drawn from the priors and judged; one half of them in each of two processes. */
import { fileURLToPath } from "node:url";
import { readFolder } from "@loomwright/shop";
import { type Fault, Finder, type NetworkChange, openCar } from "../../packages/engine/src/index.js";
import { Alike } from "./alike.js";
import { drawn, type Random, randomOf } from "./random.js";
import { type Search, search } from "./search.js";
import { SimulatedCar, shows } from "./simulated-car.js";

/** Cases of both halves together. */
export const CASES = { single: 1000, misread: 100, double: 300 } as const;
/** Chance that a reading written down has nothing to do with the circuit, for the cases with misreadings. */
export const MISREAD = 0.05;

/** Sums over cases of one sort. */
export interface Sums {
	readonly cases: number;
	/** The fault itself, or one that no reading tells from it, stands first. */
	readonly right: number;
	/** The fault itself stands first. */
	readonly exact: number;
	readonly readings: number;
	/** Bits to be found out before the first reading. */
	readonly bits: number;
}

/** A fault by what it is called. */
export type Alone = Pick<Fault, "id" | "kind" | "where">;

export interface Half {
	/** Faults of one pattern that come to the very same network at every contact, in groups of two and more. */
	readonly same: readonly (readonly Alone[])[];
	/** Share of the priors' sum that shows in some code or function. */
	readonly showing: number;
	readonly single: Sums;
	readonly misread: Sums;
	/** Both named by the leading hypothesis at once. */
	readonly double: Sums;
	/** Double faults of which the first named was there and, once it was mended, the other was named. */
	readonly inTurn: number;
}

const folder = fileURLToPath(new URL("../../demo/main/", import.meta.url));

/** Half of the cases; a few of them for a quick look. */
export function half(seed: number, of: { readonly [Sort in keyof typeof CASES]: number } = CASES): Half {
	const finder = new Finder(openCar(readFolder(folder).tables), "converted");
	finder.use(finder.effects());
	const random = randomOf(seed);
	const cases = new Cases(finder, random);
	const single = cases.singles(of.single / 2, 0);
	const misread = cases.singles(of.misread / 2, MISREAD);
	return { single, misread, ...cases.doubles(of.double / 2), showing: cases.showing(), same: same(finder) };
}

function same({ faults, watch }: Finder): Half["same"] {
	const groups = new Map<NetworkChange, Alone[]>();
	for (const { id, kind, where, patterns } of faults) {
		const [only, ...more] = patterns;
		if (only === undefined || more.length > 0) continue;
		const change = watch.reader.stands(only.change);
		const group = groups.get(change);
		if (group) group.push({ id, kind, where });
		else groups.set(change, [{ id, kind, where }]);
	}
	return [...groups.values()].filter((group) => group.length > 1);
}

class Cases {
	readonly #alike: Alike;
	#asked = 0;
	#shown = 0;

	constructor(
		readonly finder: Finder,
		readonly random: Random,
	) {
		this.#alike = new Alike(finder);
	}

	showing(): number {
		return this.#shown / this.#asked;
	}

	/** A fault drawn by its prior, until one comes that somebody would notice. */
	#noticed(): SimulatedCar {
		for (;;) {
			const fault = drawn(this.finder.faults, ({ prior }) => prior, this.random);
			const car = new SimulatedCar(this.finder, [fault], this.random);
			this.#asked++;
			if (!shows(car.seen(), this.finder)) continue;
			this.#shown++;
			return car;
		}
	}

	singles(count: number, misread: number): Sums {
		const sums = { cases: count, right: 0, exact: 0, readings: 0, bits: 0 };
		for (let k = 0; k < count; k++) {
			const car = this.#noticed();
			const before = car.change;
			const result = search(this.finder, car, car.seen(), misread);
			const named = namedBy(result);
			if (named[0] === car.faults[0]!.id) sums.exact++;
			if (named.length === 1 && this.#names(named[0]!, car.faults[0]!, [before, car.change])) sums.right++;
			sums.readings += result.readings;
			sums.bits += result.bits;
		}
		return sums;
	}

	/** Pairs neither of which hides the other: with both, something else is seen than with either. */
	doubles(count: number): { double: Sums; inTurn: number } {
		const sums = { cases: count, right: 0, exact: 0, readings: 0, bits: 0 };
		let inTurn = 0;
		for (let k = 0; k < count; ) {
			const [one, two] = [this.#noticed(), this.#noticed()];
			const faults = [one.faults[0]!, two.faults[0]!];
			const car = new SimulatedCar(this.finder, faults, this.random);
			const both = words(car);
			if (faults[0] === faults[1] || both === words(one) || both === words(two)) continue;
			k++;
			const result = search(this.finder, car, car.seen());
			const named = namedBy(result);
			const hit = faults.map((fault) => named.some((id) => this.#names(id, fault, changesOf(fault))));
			if (named.length === 2 && hit.every(Boolean)) sums.right++;
			if (faults.every(({ id }) => named.includes(id))) sums.exact++;
			sums.readings += result.readings;
			sums.bits += result.bits;
			if (this.#inTurn(named, faults, hit)) inTurn++;
		}
		return { double: sums, inTurn };
	}

	/** Everything named is there; what was not named is found once that is mended. */
	#inTurn(named: readonly string[], faults: readonly Fault[], hit: readonly boolean[]): boolean {
		const there = named.every((id) => faults.some((fault) => this.#names(id, fault, changesOf(fault))));
		const left = faults.filter((_, k) => !hit[k]);
		if (!there || left.length === 2) return false;
		if (left.length === 0) return true;
		const car = new SimulatedCar(this.finder, left, this.random);
		const before = car.change;
		const next = namedBy(search(this.finder, car, car.seen()));
		return next.length === 1 && this.#names(next[0]!, left[0]!, [before, car.change]);
	}

	/** @param as the ways in which the fault showed itself */
	#names(id: string, fault: Fault, as: readonly NetworkChange[]): boolean {
		if (id === fault.id) return true;
		const named = this.finder.faults.find((one) => one.id === id);
		return named?.patterns.some(({ change }) => as.some((shown) => this.#alike.of(change, shown))) === true;
	}
}

const changesOf = ({ patterns }: Fault): NetworkChange[] => patterns.map(({ change }) => change);

function namedBy({ found }: Search): string[] {
	return found.faults[0]?.id.split(" & ") ?? [];
}

function words(car: SimulatedCar): string {
	const { codes, functions, units } = car.seen("", 0);
	return JSON.stringify([codes, functions, units]);
}

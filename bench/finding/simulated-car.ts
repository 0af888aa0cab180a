/**
 * A car with something wrong with it, as the shop meets it: what the units report, what works, what a meter shows.
 *
 * Every number comes from the engine under the fault's change, scattered by the tolerance of the parts and by the
 * meter; the finder knows the spread of that scatter, not the draw.
 */

import { meterDeviation } from "../../packages/engine/src/find/quantities.js";
import type {
	Fault,
	Finder,
	NetworkChange,
	Occasion,
	Question,
	TakenReading,
} from "../../packages/engine/src/index.js";
import { drawn, type Random } from "./random.js";

type Pattern = Fault["patterns"][number];

/** Millivolts that a voltmeter shows on a wire with no way to anywhere. */
const FLOATING_VOLTS = 0.03;
/** Ohms from which the meter shows 'open'. */
const MOST_OHMS = 4e7;

export class SimulatedCar {
	readonly #finder: Finder;
	readonly #random: Random;
	#change: NetworkChange;

	constructor(
		finder: Finder,
		readonly faults: readonly Fault[],
		random: Random,
	) {
		this.#finder = finder;
		this.#random = random;
		this.#change = this.#thrown();
	}

	/** How the faults show themselves at the moment. */
	get change(): NetworkChange {
		return this.#change;
	}

	#thrown(): NetworkChange {
		const changes = this.faults.map(
			({ patterns }) => drawn(patterns, ({ weight }) => weight, this.#random).change,
		);
		return together(changes);
	}

	/** Takes a plug off and puts it back. */
	reseat(part: string): void {
		if (this.faults.some(({ shakenBy }) => shakenBy === part)) this.#change = this.#thrown();
	}

	/**
	 * Every unit asked, every function tried.
	 * @param scatter 0: as if every part were as drawn in the tables
	 */
	seen(reseated = "", scatter = 1): Occasion {
		const { watch } = this.#finder;
		const { predictions, monitors, needs } = watch;
		const pattern: Pattern = { weight: 1, change: this.#change };
		const units = [...new Set(monitors.map(({ monitor }) => monitor.unit))].filter((unit) =>
			watch.answers(unit, pattern, -1),
		);
		const value = (thing: number) => {
			const number = predictions.number(thing, this.#change);
			return number + scatter * predictions.deviation(thing) * this.#random.normal();
		};
		const codes = monitors.filter(({ monitor, thing }) => {
			if (!units.includes(monitor.unit)) return false;
			const number = value(thing);
			if (Number.isNaN(number)) return this.#random.uniform() < 0.5;
			return number < (monitor.below ?? -Infinity) || number > (monitor.above ?? Infinity);
		});
		const functions = [...needs].map(([name, rows]): [string, boolean] => [
			name,
			rows.every(({ thing, low, high }) => {
				const number = value(thing);
				return number >= (low ?? -Infinity) && number <= (high ?? Infinity);
			}),
		]);
		return {
			note: "",
			reseated,
			codes: units.length === 0 ? undefined : [...new Set(codes.map(({ monitor }) => monitor.code))],
			units,
			functions: Object.fromEntries(functions),
			readings: [],
			bench: {},
		};
	}

	/** @param misread chance that what is written down has nothing to do with the circuit */
	reading(question: Question, misread = 0): TakenReading {
		const { what } = question;
		const { uniform, normal } = this.#random;
		const volts = what === "volts" || what === "drop";
		if (uniform() < misread) {
			if (!volts && uniform() < 0.3) return { ...question, value: "open" };
			return { ...question, value: volts ? 13 * uniform() : Math.sinh(10 * uniform()) };
		}
		const read = this.#finder.watch.reader.of(question)!;
		const number = read.number(this.#change);
		if (Number.isNaN(number) || (what === "ohms" && number > MOST_OHMS)) {
			if (!volts) return { ...question, value: "open" };
			return { ...question, value: FLOATING_VOLTS * normal() };
		}
		const deviation = Math.hypot(read.deviation(), meterDeviation(what, number));
		const value = number + deviation * normal();
		return { ...question, value: what === "ohms" ? Math.max(0, value) : value };
	}
}

/** Several changes at once; an opening has the last word. */
function together(changes: readonly NetworkChange[]): NetworkChange {
	if (changes.length === 1) return changes[0]!;
	const branches = new Map<number, NetworkChange["branches"][number]>();
	for (const one of changes.flatMap((change) => change.branches)) {
		const there = branches.get(one.branch);
		if (there === undefined || !("siemens" in there && there.siemens === 0)) branches.set(one.branch, one);
	}
	return { branches: [...branches.values()], added: changes.flatMap(({ added }) => added) };
}

/** Whether something that the driver or a read-out sees is wrong. */
export function shows({ codes, functions, units }: Occasion, of: Finder): boolean {
	const asked = new Set(of.watch.monitors.map(({ monitor }) => monitor.unit)).size;
	return (codes?.length ?? 0) > 0 || units.length < asked || Object.values(functions).some((holds) => !holds);
}

/**
 * Steady heat of the wires: each conductor's temperature at its current, fed back into its resistance until it settles.
 *
 * t = air + rise(I, t), solved as a fixed point over the whole network: warmer wires carry less where they are most of
 * their circuit. Where the load sets the current, a wire at about 2.3 times its rated current has no steady temperature:
 * its resistance gains faster than it can give off. That is reported, not cut off.
 *
 * What it leaves out is on the careful side: heat led off into terminals, and switching on for a short while only.
 */

import type { Wire } from "../loom/index.js";
import { bundleShare, INSULATION_CELSIUS, ratedAmps, wireRise } from "../units/index.js";
import { type Change, NO_CHANGE } from "./changes.js";
import type { Circuit } from "./circuit.js";
import { CircuitError } from "./error.js";
import { conductorOhms } from "./network.js";
import { type Operating, operate } from "./operating.js";
import { branchAmps } from "./probes.js";

/** Kelvin by which no wire moves any more. */
const STILL = 1e-4;
/** Melting point of copper in degrees C, from memory. A wire that stays there has no steady temperature. */
const MELTS = 1085;
const MOST_ROUNDS = 200;
/** Share of its rated current from which a wire counts as loaded in its bundle (1 % of the heat): common practice, no source. */
const LOADED = 0.1;

export interface HeatOptions {
	/** Air around the loom in degrees C. */
	readonly ambientCelsius: number;
	/**
	 * Number of loaded wires in a bundle, by the `bundle` of its wires. Default: those that carry a tenth of their
	 * rated current or more. Wires without a bundle lie in free air.
	 */
	readonly perBundle?: ReadonlyMap<string, number>;
	/** Further share of all rated currents, above 0: 0.91 at 20000 ft (reference/electrical/fuse-wire-rules.csv, R9). */
	readonly derate?: number;
	/** Highest temperature of the insulation in degrees C. Default: class A, 85. */
	readonly insulationCelsius?: number;
	/** What is different from the loom as it stands; it has the last word on a wire that it changes. */
	readonly change?: Change;
}

/** Steady state by wire id; where not settled, the last round's, at most copper's melting point. */
export interface Heated {
	readonly celsius: ReadonlyMap<string, number>;
	/** From the wire's `from` end to its `to` end. */
	readonly amps: ReadonlyMap<string, number>;
	/** Of the warm conductor, end to end. */
	readonly ohms: ReadonlyMap<string, number>;
	/** Loaded wires counted in each bundle. */
	readonly perBundle: ReadonlyMap<string, number>;
	/** Wires whose conductor is hotter than the insulation stands, hottest first. */
	readonly overheated: readonly string[];
	readonly settled: boolean;
	/** Solves of the network. */
	readonly rounds: number;
	/** The operating point with the wires at these resistances. */
	readonly point: Operating;
}

interface Conductor {
	readonly wire: Wire;
	readonly branch: number;
	/** Amperes that bring the rated rise where it lies. */
	rated: number;
}

/**
 * Temperatures of all wires in a condition, listed or said in place.
 * @throws RangeError for an unknown condition or options out of range; CircuitError when the network does not settle
 */
export function heatWires(circuit: Circuit, condition: string, options: HeatOptions): Heated {
	const { ambientCelsius, derate = 1, insulationCelsius = INSULATION_CELSIUS.A } = options;
	check("ambientCelsius", ambientCelsius, -60, 200);
	check("derate", derate, 0.01, 1);
	check("insulationCelsius", insulationCelsius, 0, 500);
	const standing = circuit.standing(condition);
	const own = options.change ?? NO_CHANGE;
	const conductors = conductorsOf(circuit, derate);
	const solved = (celsius: readonly number[]) => {
		const warm = conductors.map(({ wire, branch }, k) => ({
			branch,
			siemens: 1 / conductorOhms(wire, celsius[k]!).ohms,
		}));
		const change = { branches: [...warm, ...own.branches], added: own.added };
		return operate(circuit, standing, { change });
	};
	let celsius = conductors.map(() => ambientCelsius);
	let point = solved(celsius);
	const perBundle = options.perBundle ?? loadedWires(conductors, point);
	for (const conductor of conductors) conductor.rated *= bundleShare(countIn(perBundle, conductor.wire));
	for (let rounds = 1; ; rounds++) {
		let move = 0;
		let hottest = ambientCelsius;
		const next = conductors.map(({ branch, rated }, k) => {
			const t = Math.min(MELTS, ambientCelsius + wireRise(branchAmps(point, branch), rated, celsius[k]!));
			move = Math.max(move, Math.abs(t - celsius[k]!));
			hottest = Math.max(hottest, t);
			return t;
		});
		if (move < STILL || rounds === MOST_ROUNDS) {
			const settled = move < STILL && hottest < MELTS;
			return { ...table(conductors, next, point, insulationCelsius), perBundle, settled, rounds, point };
		}
		celsius = next;
		point = solved(celsius);
	}
}

/**
 * The operating point of a condition with its wires as warm as their currents make them.
 * @throws as `heatWires`, and CircuitError naming the wires that do not come to a steady temperature
 */
export function operateWarm(circuit: Circuit, condition: string, options: HeatOptions): Operating {
	const { settled, point, overheated } = heatWires(circuit, condition, options);
	if (settled) return point;
	const names = overheated.slice(0, 3);
	throw new CircuitError(`no steady temperature: ${names.join(", ")} would burn`, names);
}

function check(name: string, value: number, least: number, most: number): void {
	if (!(value >= least && value <= most))
		throw new RangeError(`${name} is ${value}; wanted: ${least} to ${most}`);
}

function conductorsOf(circuit: Circuit, derate: number): Conductor[] {
	return circuit.branches.flatMap(({ owner }, branch) => {
		const wire = owner.what === "wire" ? circuit.loom.wires.get(owner.id) : undefined;
		return wire ? [{ wire, branch, rated: derate * ratedAmps(wire.mm2) }] : [];
	});
}

function loadedWires(conductors: readonly Conductor[], point: Operating): Map<string, number> {
	const count = new Map<string, number>();
	for (const { wire, branch, rated } of conductors)
		if (wire.bundle !== "" && Math.abs(branchAmps(point, branch)) >= LOADED * rated)
			count.set(wire.bundle, (count.get(wire.bundle) ?? 0) + 1);
	return count;
}

const countIn = (perBundle: ReadonlyMap<string, number>, { bundle }: Wire) =>
	bundle === "" ? 1 : (perBundle.get(bundle) ?? 1);

function table(
	conductors: readonly Conductor[],
	celsius: readonly number[],
	point: Operating,
	insulation: number,
) {
	const by = (value: (k: number) => number) => new Map(conductors.map(({ wire }, k) => [wire.id, value(k)]));
	return {
		celsius: by((k) => celsius[k]!),
		amps: by((k) => branchAmps(point, conductors[k]!.branch)),
		ohms: by((k) => conductorOhms(conductors[k]!.wire, celsius[k]!).ohms),
		overheated: conductors
			.map(({ wire }, k) => ({ id: wire.id, t: celsius[k]! }))
			.filter(({ t }) => t > insulation)
			.sort((x, y) => y.t - x.t)
			.map(({ id }) => id),
	};
}

/** The temperature of conductors at lasting currents among their neighbours. */
import { branchAmps, type Operating } from "../../circuit/index.js";
import { bundleShare, INSULATION_CELSIUS, ratedAmps, wireRise } from "../../units/index.js";

/** Air around the loom in degrees C: a warm day, common practice, no source. */
export const AIR_CELSIUS = 40;
/** Insulation class B in degrees C, lasting: insulation-limits.csv 001 (from memory, ISO 6722-1). */
export const LASTING_CELSIUS = INSULATION_CELSIUS.B;

const STILL = 1e-6;
const MOST_ROUNDS = 500;

/**
 * Degrees C at which it comes to rest, with its resistance growing as it warms; infinite where it never does.
 * @param loaded wires that carry current in its bundle, itself included
 */
export function steadyCelsius(mm2: number, amps: number, loaded: number, air = AIR_CELSIUS): number {
	const rated = ratedAmps(mm2) * bundleShare(Math.max(1, loaded));
	let celsius = air;
	for (let round = 0; round < MOST_ROUNDS; round++) {
		const next = air + wireRise(amps, rated, celsius);
		if (!(next < 5000)) return Number.POSITIVE_INFINITY;
		if (Math.abs(next - celsius) < STILL) return next;
		celsius = next;
	}
	return Number.POSITIVE_INFINITY;
}

/** Share of its rated current from which a wire counts as loaded in its bundle: common practice, no source. */
const LOADED = 0.1;
/** Amperes per mm2 below which no wire up to 120 mm2 carries that share: spares the looking up. */
export const COOL_DENSITY = 0.3;

/** Loaded wires in each bundle. */
export function loadedIn(point: Operating): ReadonlyMap<string, number> {
	const { circuit } = point;
	const count = new Map<string, number>();
	circuit.branches.forEach(({ owner }, branch) => {
		const wire = owner.what === "wire" ? circuit.loom.wires.get(owner.id) : undefined;
		if (wire === undefined || wire.bundle === "") return;
		const amps = Math.abs(branchAmps(point, branch));
		if (amps > COOL_DENSITY * wire.mm2 && amps >= LOADED * ratedAmps(wire.mm2))
			count.set(wire.bundle, (count.get(wire.bundle) ?? 0) + 1);
	});
	return count;
}

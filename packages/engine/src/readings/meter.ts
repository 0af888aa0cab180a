/**
 * The meter: what it adds to the band of a reading.
 *
 * A general workshop multimeter: 0.5 % + 10 mV, 0.8 % + 0.1 ohm with leads zeroed, clamp 2 % + 0.1 A, 10 Mohm
 * input: common practice, no source. Limits, not standard deviations.
 */
import type { Probe } from "../circuit/index.js";

export interface Meter {
	readonly share: Readonly<Record<Probe["kind"], number>>;
	readonly floor: Readonly<Record<Probe["kind"], number>>;
	/** Input resistance in ohms when reading volts. */
	readonly input_ohms: number;
	/** Above this many ohms it shows 'open'. */
	readonly most_ohms: number;
}

export const WORKSHOP_METER: Meter = {
	share: { volts: 0.005, ohms: 0.008, amps: 0.02 },
	floor: { volts: 0.01, ohms: 0.1, amps: 0.1 },
	input_ohms: 1e7,
	most_ohms: 4e7,
};

/** Limit of the meter's own error at a value, in the value's unit. */
export function meterError(meter: Meter, kind: Probe["kind"], value: number): number {
	return meter.share[kind] * Math.abs(value) + meter.floor[kind];
}

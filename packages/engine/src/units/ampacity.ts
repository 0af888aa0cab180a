/**
 * How warm a copper conductor gets at a steady current.
 *
 * What it gives off grows with its rise over the air, so its rise is proportional to its heat I^2 R: at the rated
 * current it is the rated rise, at any other (I / rated)^2 x R(t) / R(rated t) of it. The published 60 and 75 degrees C
 * currents follow from the 90 degrees C ones by this within 5 % (tested).
 */
import { temperatureFactor } from "./conductor.js";
import { awgMm2 } from "./size.js";

/** Air and conductor in degrees C at the rated currents. */
export const RATED = { air: 30, conductor: 90 } as const;

/** Gauge and rated amperes, one wire in free air: reference/electrical/ampacity-free-air.csv, column amps_90C. */
const RATED_AMPS: readonly (readonly [gauge: number, amps: number])[] = [
	[20, 12.5],
	[18, 18],
	[14, 35],
	[12, 40],
	[8, 80],
	[6, 105],
	[2, 190],
	[1, 220],
	[-1, 300],
	[-2, 350],
];

const ROWS = RATED_AMPS.map(([gauge, amps]) => [Math.log(awgMm2(gauge)), Math.log(amps)] as const);

/**
 * Amperes that bring one wire in free air from 30 to 90 degrees C; mm2 above zero.
 * Between the table's sizes on a line in log(mm2) and log(A); beyond its ends the last line goes on.
 */
export function ratedAmps(mm2: number): number {
	const x = Math.log(mm2);
	const last = ROWS.length - 2;
	const found = ROWS.findIndex(([size]) => size > x) - 1;
	const [x0, y0] = ROWS[found === -2 ? last : Math.max(found, 0)]!;
	const [x1, y1] = ROWS[found === -2 ? last + 1 : Math.max(found, 0) + 1]!;
	return Math.exp(y0 + ((y1 - y0) * (x - x0)) / (x1 - x0));
}

/** Most wires for which the share of the rated current holds: reference/electrical/fuse-wire-rules.csv, R8 (from memory). */
const BUNDLE: readonly (readonly [wires: number, share: number])[] = [
	[3, 1],
	[6, 0.8],
	[9, 0.7],
	[20, 0.5],
	[30, 0.45],
	[40, 0.4],
	[Number.POSITIVE_INFINITY, 0.35],
];

/** Share of its rated current that heats a wire to the same temperature among so many loaded ones, itself included. */
export function bundleShare(loadedWires: number): number {
	return BUNDLE.find(([most]) => loadedWires <= most)![1];
}

/** Kelvin over the air of a conductor that stands at `celsius` and carries `amps`, `rated` of which bring the rated rise. */
export function wireRise(amps: number, rated: number, celsius: number): number {
	const heat = (amps / rated) ** 2 * (temperatureFactor(celsius) / temperatureFactor(RATED.conductor));
	return (RATED.conductor - RATED.air) * heat;
}

/**
 * Highest conductor temperature in degrees C of the insulation classes of road vehicle wires.
 * From memory: ISO 6722 classes A, B and C.
 */
export const INSULATION_CELSIUS: Readonly<Record<"A" | "B" | "C", number>> = { A: 85, B: 100, C: 125 };

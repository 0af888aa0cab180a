/** Crimps: the pull that one must stand when it is tested, and how far the wire is stripped for it. */
import { awgMm2 } from "../units/size.js";

/** A number with the row that it comes from. */
export interface Sourced {
	readonly value: number;
	readonly source: string;
}

const sourced = (table: string, row: number, value: number): Sourced => ({
	value,
	source: `reference/electrical/${table}.csv ${String(row).padStart(3, "0")}`,
});

/** mm2 and newtons: crimp-pull-force-mm2.csv (from memory, IEC 60352-2). */
const PULL: readonly (readonly [mm2: number, newtons: number])[] = [
	[0.05, 6],
	[0.08, 11],
	[0.12, 15],
	[0.14, 18],
	[0.22, 28],
	[0.25, 32],
	[0.32, 40],
	[0.5, 60],
	[0.75, 85],
	[0.82, 90],
	[1, 108],
	[1.3, 135],
	[1.5, 150],
	[2.1, 200],
	[2.5, 230],
	[3.3, 275],
	[4, 310],
	[5.3, 355],
	[6, 360],
	[8.4, 370],
	[10, 380],
];

/** Gauge (1/0 is 0) and newtons: crimp-pull-force-awg.csv (from memory, UL 486A). */
const PULL_AWG: readonly (readonly [gauge: number, newtons: number])[] = [
	[26, 13.3],
	[24, 22.2],
	[22, 35.6],
	[20, 57.8],
	[18, 89],
	[16, 133.4],
	[14, 222.4],
	[12, 311.4],
	[10, 355.9],
	[8, 400.3],
	[6, 444.8],
	[4, 622.8],
	[2, 800.7],
	[1, 889.6],
	[0, 1112.1],
];

/** A size in AWG may lie a little under the metric size it stands for. */
const SLACK = 0.98;

/**
 * Newtons that a crimp on a wire of this size must stand; a size between two rows counts as the smaller.
 * Above 10 mm2, where the metric table ends, out of the table of gauges. Undefined under 0.05 mm2.
 */
export function pullForce(mm2: number): Sourced | undefined {
	if (mm2 > PULL.at(-1)![0] * 1.02) return pullForceAwg(mm2);
	const at = PULL.findLastIndex(([size]) => size * SLACK <= mm2);
	return at < 0 ? undefined : sourced("crimp-pull-force-mm2", at + 1, PULL[at]![1]);
}

/** The same out of the table of American gauges; undefined under 26 AWG. */
export function pullForceAwg(mm2: number): Sourced | undefined {
	const at = PULL_AWG.findLastIndex(([gauge]) => awgMm2(gauge) * SLACK <= mm2);
	return at < 0 ? undefined : sourced("crimp-pull-force-awg", at + 1, PULL_AWG[at]![1]);
}

/** Largest size in mm2 and millimetres stripped: terminal-practice.csv (common practice, no source). */
const STRIP: readonly (readonly [upTo: number, mm: number])[] = [
	[0.5, 4],
	[1.5, 5],
	[2.5, 6],
	[6, 8],
	[10, 11],
	[16, 13],
	[25, 15],
	[35, 17],
	[50, 20],
	[70, 22],
];

/** Millimetres of insulation to take off for a terminal; undefined above 70 mm2. The terminal's maker has the last word. */
export function stripLength(mm2: number): Sourced | undefined {
	const at = STRIP.findIndex(([upTo]) => mm2 <= upTo * 1.06);
	return at < 0 ? undefined : sourced("terminal-practice", at + 1, STRIP[at]![1]);
}

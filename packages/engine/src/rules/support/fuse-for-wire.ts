/** The largest fuse that may protect a wire: reference/electrical/fuse-for-wire.csv, whose rows say how they came. */

/** Cross-section in mm2 and the largest fuse in amperes, ascending. */
export const FUSE_FOR_WIRE: readonly (readonly [mm2: number, amps: number])[] = [
	[0.22, 5],
	[0.35, 7.5],
	[0.5, 10],
	[0.75, 15],
	[1, 15],
	[1.5, 25],
	[2.5, 30],
	[4, 50],
	[6, 60],
	[10, 80],
	[16, 125],
	[25, 175],
	[35, 200],
	[50, 250],
	[70, 300],
];

/** A size in AWG may lie a little under the metric size it stands for. */
const SLACK = 0.98;

/** Amperes of the largest fuse for a wire; a size between two rows counts as the smaller, under the table 0. */
export function largestFuse(mm2: number): number {
	return FUSE_FOR_WIRE.findLast(([size]) => size * SLACK <= mm2)?.[1] ?? 0;
}

/** The smallest cross-section in mm2 that a fuse of `amps` protects; undefined above the table. */
export function wireForFuse(amps: number): number | undefined {
	return FUSE_FOR_WIRE.find(([, most]) => most >= amps)?.[0];
}

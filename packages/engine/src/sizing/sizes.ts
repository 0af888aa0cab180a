/** Sizes on the shelf, and the smallest that does. */
import { nearestAwg } from "../units/size.js";

/** Road-vehicle cable in mm2: ISO 6722-1, reference/electrical/conductor-iso6722-memory.csv (from memory). */
export const METRIC_MM2: readonly number[] = [
	...[0.22, 0.35, 0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120],
];

/** Even gauges on the shelf, 24 to 4/0, as gauge numbers (1/0 is 0): common practice, no source. */
export const GAUGES: readonly number[] = [24, 22, 20, 18, 16, 14, 12, 10, 8, 6, 4, 2, 0, -1, -2, -3];

/** `18`, `2/0`: for showing a cross-section beside mm2. */
export const awgText = nearestAwg;

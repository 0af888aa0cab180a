/**
 * Largest resistance times cross-section allowed of a flexible conductor of road vehicles, at 20 degrees C.
 *
 * `[mm2, ohm mm2/m]`, from memory: ISO 6722-1 table of plain copper conductors
 * (reference/electrical/conductor-iso6722-memory.csv). Each lies under IEC 60228 class 5, which was read.
 */
export const MOST_OHM_MM2_PER_METRE: readonly (readonly [mm2: number, most: number])[] = [
	[0.13, 0.01768],
	[0.22, 0.018656],
	[0.5, 0.01855],
	[0.75, 0.018525],
	[1.25, 0.018625],
	[1.5, 0.01905],
	[2.5, 0.019],
	[3, 0.01845],
	[5, 0.0197],
	[6, 0.01884],
	[10, 0.0182],
	[12, 0.01824],
	[20, 0.0191],
	[25, 0.018575],
	[35, 0.018445],
	[40, 0.01892],
	[60, 0.0189],
	[70, 0.01813],
	[120, 0.01836],
];

/** What closes a joint: the wire's outside diameter for its seal, the splice's barrel and its sleeve. */
import type { Sourced } from "./crimp.js";

/** mm2 and largest outside diameter in mm: cable-diameter.csv (from memory, ISO 6722-1 thin wall). */
const OUTSIDE: readonly (readonly [mm2: number, mm: number])[] = [
	[0.22, 1.2],
	[0.35, 1.3],
	[0.5, 1.6],
	[0.75, 1.9],
	[1, 2.1],
	[1.5, 2.4],
	[2.5, 3],
	[4, 3.7],
	[6, 4.3],
	[10, 6],
	[16, 7.2],
	[25, 8.7],
	[35, 10.4],
	[50, 12.2],
	[70, 14.4],
];

/** Largest sum of the wires in mm2 and size of the barrel; first row of terminal-practice.csv for them. */
const BARRELS = { first: 14, upTo: [1.5, 2.5, 6, 10, 16, 25] } as const;

/** Sleeves 3 to 1: as supplied and shrunk, in mm, and their first row in terminal-practice.csv. */
const SLEEVES = {
	first: 20,
	sizes: [
		[3, 1],
		[6, 2],
		[9, 3],
		[12, 4],
		[18, 6],
		[24, 8],
	],
} as const;

const row = (table: string, at: number) => `reference/electrical/${table}.csv ${String(at).padStart(3, "0")}`;

/** Largest outside diameter in mm of a thin-wall wire, of the next size of the table; undefined above 70 mm2. */
export function outsideDiameter(mm2: number): Sourced | undefined {
	const at = OUTSIDE.findIndex(([size]) => mm2 <= size * 1.06);
	return at < 0 ? undefined : { value: OUTSIDE[at]![1], source: row("cable-diameter", at + 1) };
}

/** Barrel in mm2 for a splice of wires that sum up to `mm2`; undefined above 25. */
export function spliceBarrel(mm2: number): Sourced | undefined {
	const at = BARRELS.upTo.findIndex((most) => mm2 <= most * 1.02);
	return at < 0
		? undefined
		: { value: BARRELS.upTo[at]!, source: row("terminal-practice", BARRELS.first + at) };
}

/**
 * Sleeve, in mm as supplied, that goes over the thicker side of a splice and shrinks on the thinner one.
 * @param sides outside diameters in mm of the wires on either side
 * @returns undefined where none does both
 */
export function sleeveFor(sides: readonly [readonly number[], readonly number[]]): Sourced | undefined {
	// Round wires side by side lie in a circle of their joint area over about 0.7 of it.
	const round = (mm: readonly number[]) =>
		mm.length === 1 ? mm[0]! : Math.sqrt(mm.reduce((sum, d) => sum + d * d, 0) / 0.7);
	const [a, b] = sides.map(round) as [number, number];
	const [thin, thick] = [Math.min(a, b), Math.max(a, b)];
	const at = SLEEVES.sizes.findIndex(([supplied, shrunk]) => thick * 1.1 <= supplied && shrunk <= thin);
	if (at < 0) return undefined;
	return { value: SLEEVES.sizes[at]![0], source: row("terminal-practice", SLEEVES.first + at) };
}

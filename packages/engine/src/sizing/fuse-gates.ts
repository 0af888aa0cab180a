/** The times between which a fuse opens: reference/electrical/fuse-gates.csv (from memory, ISO 8820-3 and ISO 8820-4). */

export interface Gate {
	/** Current as a share of the rating. */
	readonly share: number;
	/** It does not open before. */
	readonly least: number;
	/** It has opened by then; undefined: it must carry this current. */
	readonly most: number | undefined;
	/** Row of the table. */
	readonly source: string;
}

const gate = (row: number, share: number, least: number, most?: number): Gate => ({
	...{ share, least, most },
	source: `reference/electrical/fuse-gates.csv ${String(row).padStart(3, "0")}`,
});

/** Blade fuses up to 40 A, then high-current fuses. */
const BODIES: readonly { readonly upTo: number; readonly gates: readonly Gate[] }[] = [
	{
		upTo: 40,
		gates: [
			gate(1, 1.1, 360000),
			gate(2, 1.35, 0.75, 600),
			gate(3, 1.6, 0.25, 50),
			gate(4, 2, 0.15, 5),
			gate(5, 3.5, 0.04, 0.5),
			gate(6, 6, 0.02, 0.1),
		],
	},
	{
		upTo: Number.POSITIVE_INFINITY,
		gates: [
			gate(7, 1, 360000),
			gate(8, 1.35, 60, 1800),
			gate(9, 2, 2, 60),
			gate(10, 3.5, 0.2, 7),
			gate(11, 6, 0.04, 1),
		],
	},
];

/** Gates of a fuse of this rating in amperes, by rising current. */
export function gatesOf(rating: number): readonly Gate[] {
	return BODIES.find(({ upTo }) => rating <= upTo)!.gates;
}

/**
 * Seconds for which a fuse holds a current; undefined: 100 hours and more. Between two gates on a line of the logarithms,
 * as time-current curves are drawn; beyond the last gate the last line goes on.
 */
export function holdsFor(rating: number, amps: number): number | undefined {
	const gates = gatesOf(rating);
	const at = gates.findIndex(({ share }) => amps <= share * rating);
	if (at === 0) return undefined;
	const to = gates[at < 0 ? gates.length - 1 : at]!;
	const from = gates[(at < 0 ? gates.length - 1 : at) - 1]!;
	const way = Math.log(amps / rating / from.share) / Math.log(to.share / from.share);
	return from.least * (to.least / from.least) ** way;
}

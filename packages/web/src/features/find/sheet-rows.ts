/** Rows of the prove sheet that would tell most about what explains the evidence, while the battery stays off. */
import type { Found, ProveSheet, SheetRow } from "@loomwright/engine";
import { type AllTaken, rowsOf, stateOf } from "../prove/rows.js";

export interface WorthReading {
	readonly row: SheetRow;
	/** Chance that it is not right. */
	readonly chance: number;
	/** Information in bits of right or not right. */
	readonly bits: number;
}

/** A row that tells less is not worth the walk, in bits. */
const LEAST_BITS = 0.02;

/** Unread rows, the most telling first; each is not right under the faults that it catches, and right under all else. */
export function worthReading(
	sheet: ProveSheet,
	taken: AllTaken,
	{ faults }: Pick<Found, "faults">,
): WorthReading[] {
	const posteriors = new Map(faults.map(({ id, posterior }) => [id, posterior]));
	return rowsOf(sheet)
		.filter((row) => stateOf(row, taken) === "unread")
		.map((row) => {
			const chance = row.catches.reduce((sum, id) => sum + (posteriors.get(id) ?? 0), 0);
			return { row, chance, bits: entropy(chance) };
		})
		.filter(({ bits }) => bits >= LEAST_BITS)
		.sort((a, b) => b.bits - a.bits);
}

/** Bits of an outcome that comes with this chance or does not. */
function entropy(chance: number): number {
	if (chance <= 0 || chance >= 1) return 0;
	return -chance * Math.log2(chance) - (1 - chance) * Math.log2(1 - chance);
}

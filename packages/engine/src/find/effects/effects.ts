/**
 * What every fault of a car does to its codes and functions, found once and kept by the hash of what it was found from.
 *
 * A fault leaves most of them as on the sound car, so only what differs is kept: a few hundred kilobytes.
 */
import type { Fault } from "../../faults/index.js";
import type { Loom } from "../../loom/index.js";
import { hashText } from "./content-hash.js";

/** Raised when the reckoning changes so that what was kept is no longer what would be found. */
const RECKONING = 1;

export interface Effects {
	/** Hash of loom, conditions, monitors, functions and faults. */
	readonly key: string;
	/** What each row is: a monitor by number, a function, a unit that answers. */
	readonly rows: readonly string[];
	/** Chance of each row on the sound car. */
	readonly sound: Float32Array;
	/** Per numbered pattern the first of its differences; one more than there are patterns. */
	readonly first: Uint32Array;
	/** Row of each difference, and the chance there. */
	readonly row: Uint16Array;
	readonly chance: Float32Array;
}

/** Chances nearer than this are one. */
const NEAR = 1e-6;

/** Key of what a car's faults do: the same for the same tables, whatever their order of loading. */
export function effectsKey(loom: Loom, faults: readonly Fault[]): string {
	const plain = (_key: string, value: unknown) => (value instanceof Map ? [...value] : value);
	const changes = faults.map(({ id, patterns }) => [id, patterns]);
	return hashText(JSON.stringify([RECKONING, loom, changes], plain));
}

/**
 * @param chance of a row under a pattern (undefined: the sound car); called for every row of every pattern
 */
export function gather(
	key: string,
	rows: readonly string[],
	faults: readonly Fault[],
	chance: (row: number, pattern: Fault["patterns"][number] | undefined) => number,
): Effects {
	const sound = Float32Array.from(rows, (_, row) => chance(row, undefined));
	const first = [0];
	const row: number[] = [];
	const chances: number[] = [];
	for (const { patterns } of faults)
		for (const pattern of patterns) {
			for (let r = 0; r < rows.length; r++) {
				const here = chance(r, pattern);
				if (Math.abs(here - sound[r]!) <= NEAR) continue;
				row.push(r);
				chances.push(here);
			}
			first.push(row.length);
		}
	return {
		...{ key, rows, sound },
		first: Uint32Array.from(first),
		row: Uint16Array.from(row),
		chance: Float32Array.from(chances),
	};
}

/** Chance of a row under a numbered pattern. */
export function chanceOf({ first, row, chance, sound }: Effects, pattern: number, of: number): number {
	for (let k = first[pattern]!; k < first[pattern + 1]!; k++) if (row[k] === of) return chance[k]!;
	return sound[of]!;
}

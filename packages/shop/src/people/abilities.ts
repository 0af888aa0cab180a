/** What a person may sign, by sort of step: set by the owner, else by role and practice. */
import { CRITICAL, SORTS, type Sort } from "./sorts.js";

export const ROLES = ["owner", "technician", "apprentice"] as const;
export type Role = (typeof ROLES)[number];

export const ABILITIES = ["alone", "second", "not yet"] as const;
/** `second`: signs, and someone who may sign alone signs too. */
export type Ability = (typeof ABILITIES)[number];

/** Steps signed under supervision after which an apprentice signs such a step alone; common practice, no source. */
export const PRACTICE = 5;

export interface Cell {
	readonly sort: Sort;
	readonly ability: Ability;
	readonly because: "role" | "practice" | "owner";
	/** Steps signed under supervision so far. */
	readonly supervised: number;
	/** Two people answer for such a step, whoever they are. */
	readonly critical: boolean;
}

/**
 * A person's row of the matrix.
 * @param set what the owner has set, by sort
 * @param supervised steps signed under supervision, by sort
 */
export function abilitiesOf(
	role: Role,
	set: ReadonlyMap<string, Ability>,
	supervised: ReadonlyMap<string, number>,
): Cell[] {
	return SORTS.map((sort) => {
		const critical = CRITICAL.has(sort);
		const count = supervised.get(sort) ?? 0;
		const own = set.get(sort);
		const cell = { sort, supervised: count, critical };
		if (own) return { ...cell, ability: own, because: "owner" };
		if (role !== "apprentice") return { ...cell, ability: "alone", because: "role" };
		// A critical step is opened to an apprentice by the owner alone, however much practice there was.
		if (critical) return { ...cell, ability: "not yet", because: "role" };
		return count >= PRACTICE
			? { ...cell, ability: "alone", because: "practice" }
			: { ...cell, ability: "second", because: "role" };
	});
}

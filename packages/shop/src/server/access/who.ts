/** Who asks, and which rights that gives. */
import type { Role } from "../../people/abilities.js";

export type Who =
	/** This machine has no owner yet and serves itself alone: whoever sits at it. */
	| { readonly role: "bench" }
	| { readonly role: Role; readonly account: string; readonly name: string }
	/** A customer with a link to one job. */
	| { readonly role: "guest"; readonly job: string; readonly name: string }
	| { readonly role: "nobody" };

/** What a route asks of whoever calls it. */
export type Right =
	/** Nothing. */
	| "open"
	/** To look at one job. */
	| "look"
	/** To look at the shop. */
	| "read"
	/** To add to a job's history. */
	| "write"
	/** To change a job: its tables, its guests, a copy of it. */
	| "change"
	/** To run the shop: its people. */
	| "manage";

const GRANTED: Readonly<Record<Who["role"], ReadonlySet<Right>>> = {
	bench: new Set<Right>(["open", "look", "read", "write", "change"]),
	owner: new Set<Right>(["open", "look", "read", "write", "change", "manage"]),
	technician: new Set<Right>(["open", "look", "read", "write", "change"]),
	apprentice: new Set<Right>(["open", "look", "read", "write"]),
	guest: new Set<Right>(["open", "look"]),
	nobody: new Set<Right>(["open"]),
};

/** @param job the one that is asked about; left out: none in particular */
export function may(who: Who, right: Right, job?: string): boolean {
	if (who.role === "guest" && right === "look" && job !== undefined && job !== who.job) return false;
	return GRANTED[who.role].has(right);
}

/**
 * The order in which fuses go in: each only once its feed is live, at the first turn of the key where that is so,
 * and of those the ones first that wake no control unit.
 */
import type { Circuit } from "../../circuit/index.js";
import { contactsOfPart, type Part } from "../../loom/index.js";
import { type Rung, standingAt } from "./ladder.js";
import { CarState } from "./state.js";

export interface FuseStep {
	readonly fuse: Part;
	/** Number of the rung at which it goes in. */
	readonly rung: number;
	/** Contact of the fed side, and of the side that it makes live. */
	readonly feed: string;
	readonly load: string;
	readonly before: CarState;
	readonly after: CarState;
	/** Control units whose supply it makes live. */
	readonly units: readonly string[];
}

export interface FusePlan {
	readonly steps: readonly FuseStep[];
	/** Fuses whose feed is live in no rung. */
	readonly idle: readonly Part[];
}

/** @param late fuses that stay out to the end. Cost: one solve for each fuse tried. */
export function fusePlan(circuit: Circuit, ladder: readonly Rung[], late: readonly Part[]): FusePlan {
	const fuses = [...circuit.loom.parts.values()].filter((part) => part.kind === "fuse");
	const left = new Set(fuses.filter((fuse) => !late.includes(fuse)));
	const out = new Set(fuses.map((fuse) => fuse.id));
	const steps: FuseStep[] = [];
	ladder.forEach((rung, r) => {
		if (left.size === 0) return;
		let state = CarState.settled(circuit, standingAt(circuit, rung.base, out));
		while (state !== undefined) {
			const step = nextStep(circuit, rung, state, left, out);
			if (step === undefined) return;
			steps.push({ ...step, rung: r });
			left.delete(step.fuse);
			out.delete(step.fuse.id);
			state = step.after;
		}
	});
	return { steps, idle: [...left] };
}

/** The fed contact of a fuse that is out, and the other one; undefined where nothing feeds it. */
function sidesOf(state: CarState, fuse: Part): { feed: string; load: string } | undefined {
	const [first, second] = contactsOfPart(state.circuit.loom, fuse.id);
	if (!first || !second) return undefined;
	if (state.isFed(first.id)) return { feed: first.id, load: second.id };
	return state.isFed(second.id) ? { feed: second.id, load: first.id } : undefined;
}

function nextStep(
	circuit: Circuit,
	rung: Rung,
	before: CarState,
	left: ReadonlySet<Part>,
	out: ReadonlySet<string>,
): Omit<FuseStep, "rung"> | undefined {
	let best: Omit<FuseStep, "rung"> | undefined;
	for (const fuse of left) {
		const own = sidesOf(before, fuse);
		if (own === undefined) continue;
		const still = [...out].filter((id) => id !== fuse.id);
		const after = CarState.settled(circuit, standingAt(circuit, rung.base, still));
		if (after === undefined) continue;
		const units = unitsFed(after, before);
		if (best !== undefined && units.length >= best.units.length) continue;
		best = { fuse, ...own, before, after, units };
		if (units.length === 0) break;
	}
	return best;
}

/** Control units with a supply that becomes live. */
function unitsFed(after: CarState, before: CarState): string[] {
	const { contacts, parts } = after.circuit.loom;
	const fed = after.newlyFed(before).flatMap((id) => {
		const { part, role } = contacts.get(id)!;
		return role === "supply" && parts.get(part)?.kind === "control unit" ? [part] : [];
	});
	return [...new Set(fed)];
}

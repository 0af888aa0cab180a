/** A recipe taken to another car: which steps can be done as they are, which need a decision, which cannot be done. */
import type { Loom, LoomTables, RecipeStep } from "../../loom/index.js";
import { applyRecipe } from "../../recipe/index.js";
import { isBare, SIDES } from "../nets.js";
import { Look, type Names } from "./look.js";
import { matchWires } from "./match.js";
import { misfitReason } from "./misfit-reason.js";
import type { Reason } from "./reasons.js";

export const VERDICTS = ["applies", "decide", "not here"] as const;
export type Verdict = (typeof VERDICTS)[number];

export interface Travelled {
	readonly step: RecipeStep;
	readonly verdict: Verdict;
	readonly reasons: readonly Reason[];
	/** The step as it would be done here: names of this car. */
	readonly here: RecipeStep;
}

export interface Journey {
	readonly steps: readonly Travelled[];
	/** The other car after the steps that can be done. */
	readonly loom: Loom;
	/** Wires that the steps leave with a bare end here: they need steps of their own. */
	readonly left: readonly string[];
}

/**
 * Both cars go through the recipe side by side, so that each step is held against what the step finds in the
 * car it was written for. A step that cannot be done here is left out, and the steps after it go on without it.
 * @param from the car the recipe was made for, with its new parts
 * @param to another car of its kind, as delivered
 */
export function travel(from: Pick<LoomTables, "delivered" | "newParts" | "recipe">, to: Loom): Journey {
	const fresh = from.newParts;
	let [before, here] = [from.delivered, to];
	/** Names that steps left out would have made, by name. */
	const lacking = new Map<string, string>();
	const pairs = matchWires(before, here);
	const names: Names = {
		here: new Map([...pairs].map(([id, { is }]) => [id, is.id])),
		delivered: new Map([...pairs.keys()].map((id) => [id, id])),
	};
	const steps: Travelled[] = [];
	const told = new Set<string>();
	for (const step of from.recipe) {
		const looked = new Look(step, before, here, fresh, pairs, names).done();
		const after = applyRecipe(before, [step], fresh).loom;
		const tried = applyRecipe(here, [looked.here], fresh);
		const reasons = [
			...looked.reasons.filter((one) => isNews(one, told)),
			...tried.misfits.map((one) => misfitReason(one, looked.here, here, lacking)),
		];
		const impossible = tried.misfits.length > 0 || reasons.some(({ kind }) => kind === "restraint");
		if (impossible) for (const name of madeBy(before, after)) lacking.set(name, step.step);
		else here = tried.loom;
		before = after;
		const verdict = impossible ? "not here" : reasons.length > 0 ? "decide" : "applies";
		steps.push({ step, verdict, reasons: impossible ? foremost(reasons) : reasons, here: looked.here });
	}
	const left = [...here.wires.values()]
		.filter((wire) => SIDES.some((side) => isBare(wire[side])))
		.map(({ id }) => id);
	return { steps, loom: here, left };
}

/** A difference of the cars is decided on once; how long a wire must be, at each step. */
function isNews({ kind, text }: Reason, told: Set<string>): boolean {
	if (kind === "place" || kind === "length" || kind === "restraint") return true;
	if (told.has(text)) return false;
	told.add(text);
	return true;
}

/** What stops a step comes first. */
const foremost = (reasons: readonly Reason[]): Reason[] => {
	const stops = new Set(["absent", "taken", "there already", "waits", "restraint", "other"]);
	return [...reasons].sort((a, b) => Number(stops.has(b.kind)) - Number(stops.has(a.kind)));
};

function madeBy(before: Loom, after: Loom): string[] {
	return [
		...[...after.wires.keys()].filter((id) => !before.wires.has(id)),
		...[...after.joints.keys()].filter((id) => !before.joints.has(id)),
		...[...after.parts.keys()].filter((id) => !before.parts.has(id)),
		...[...after.contacts.keys()].filter((id) => !before.contacts.has(id)),
	];
}

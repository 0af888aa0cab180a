/** The chosen options as a recipe: in an order that works, with names, and what is left loose isolated. */
import type { Joint, NewParts, RecipeStep } from "../loom/index.js";
import { type Applied, applyRecipe } from "../recipe/index.js";
import { isNewName, step } from "./leg.js";
import { isBare, SIDES } from "./nets.js";
import { type Situation, spotOfLoose } from "./situation.js";
import type { Facility, Option, Step } from "./types.js";

export interface Finished {
	readonly recipe: readonly RecipeStep[];
	/** What the recipe fits: the new parts given, without the joints that are not made, with the splices of the proposal. */
	readonly newParts: NewParts;
	/** The as-delivered loom after the recipe. */
	readonly applied: Applied;
}

export function finish(at: Situation, facilities: readonly Facility[], options: readonly Option[]): Finished {
	const chosen = [
		...at.partSteps,
		...facilities.flatMap(({ steps }) => steps),
		...options.flatMap(({ steps }) => steps),
	];
	const { steps, joints } = named(at, chosen);
	const newParts = {
		...at.fresh,
		joints: new Map([...at.fresh.joints, ...joints.map((one) => [one.id, one] as const)]),
	};
	const worked = applyRecipe(at.delivered, numbered(steps), newParts);
	const left = [...worked.loom.wires.values()].filter((wire) => SIDES.some((side) => isBare(wire[side])));
	const isolated = left.map(({ id }) => {
		const base = id.replace(/\+b$/, "");
		const side = SIDES.find((one) => at.base.wires.get(base)?.[one].at === "loose");
		const place = side === undefined ? "" : spotOfLoose(at, { wire: base, side }).place;
		return step("isolate and stow", `${id} isolated and tied back`, { wire: id, place });
	});
	const recipe = numbered([...steps, ...isolated]);
	return { recipe, newParts, applied: applyRecipe(at.delivered, recipe, newParts) };
}

const numbered = (steps: readonly Step[]): RecipeStep[] => {
	const digits = String(steps.length).length;
	return steps.map((one, k) => ({
		...one,
		step: String(k + 1).padStart(Math.max(2, digits), "0"),
		row: k + 2,
	}));
};

/** Gives new wires and splices names that the car does not have: N01 ..., SN01 ... */
function named(at: Situation, steps: readonly Step[]): { steps: Step[]; joints: Joint[] } {
	const taken = new Set(
		[at.delivered.wires, at.delivered.joints, at.delivered.parts, at.fresh.parts, at.fresh.joints].flatMap(
			(table) => [...table.keys()],
		),
	);
	const names = new Map<string, string>();
	const nameOf = (name: string): string => {
		if (!isNewName(name)) return name;
		let given = names.get(name);
		for (let k = 1; given === undefined; k++) {
			const candidate = `${name.startsWith("{joint") ? "SN" : "N"}${String(k).padStart(2, "0")}`;
			if (!taken.has(candidate)) given = candidate;
		}
		taken.add(given);
		names.set(name, given);
		return given;
	};
	const joints: Joint[] = [];
	const renamed = steps.map((one): Step => {
		const fields = { fresh: nameOf(one.fresh), joint: nameOf(one.joint), part: nameOf(one.part) };
		const places = { from: nameOf(one.from), to: nameOf(one.to) };
		if (isNewName(one.part))
			joints.push({
				id: fields.part,
				kind: "splice",
				label: one.title,
				place: one.place,
				ohms: undefined,
				metal: "",
				marks: [],
				note: "",
			});
		const title = one.title.replace(/\{[^}]*\}/g, nameOf);
		return { ...one, ...fields, ...places, title };
	});
	return { steps: renamed, joints };
}

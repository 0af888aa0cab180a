/** The converted loom as it would be with one step of the recipe forgotten, or done on the wire beside the right one. */
import { STEP_ON } from "../faults/index.js";
import {
	cavityNeighbours,
	type Loom,
	type LoomTables,
	type RecipeStep,
	type Wire,
	wiresAtContact,
	wiresInBundle,
} from "../loom/index.js";
import { applyRecipe, leftOut, loomAs } from "../recipe/index.js";

/** By the step's name; where it was done on another wire, by its name, `@` and the wire. */
export function variantsOf(tables: LoomTables): Map<string, Loom> {
	// A bare end conducts nothing: leaving it bare changes nothing that is measured.
	const conducts = ({ kind }: { readonly kind: string }) => kind !== "isolate and stow";
	const looms = leftOut(tables.delivered, tables.recipe, tables.newParts, conducts);
	return new Map([...looms, ...misplaced(tables)].map(([name, loom]) => [name, loomAs(loom, "converted")]));
}

/** Loom with one step done on the wire beside: cut, tapped, or its terminal moved in place of the right one. */
function misplaced({ delivered, recipe, newParts }: LoomTables): [name: string, loom: Loom][] {
	const worked = new Set(recipe.flatMap(({ wire, other }) => [wire, other]));
	const beside = (id: string) => {
		const wire = delivered.wires.get(id);
		return wire && mostAlike(delivered, wire, worked)?.id;
	};
	return recipe.flatMap((step, k): [string, Loom][] => {
		const [column, instead] = mistaken(delivered, step, beside);
		if (instead === undefined) return [];
		const changed: RecipeStep = { ...step, [column]: instead };
		const steps = recipe.map((other, at) => (at === k ? changed : other));
		const { loom, misfits } = applyRecipe(delivered, steps, newParts);
		// Only where the step itself can be done there.
		if (misfits.some(({ step: name }) => name === step.step)) return [];
		return [[`${step.step}${STEP_ON}${instead}`, loom]];
	});
}

/** The column of a step that is easily mistaken on the car, and what is taken for what it names. */
function mistaken(
	loom: Loom,
	step: RecipeStep,
	beside: (wire: string) => string | undefined,
): readonly [column: "wire" | "other" | "from", instead: string | undefined] {
	if (step.kind === "cut") return ["wire", beside(step.wire)];
	if (step.kind === "join") return ["other", beside(step.other)];
	const contact = step.kind === "move terminal" ? loom.contacts.get(step.from) : undefined;
	const next = contact && cavityNeighbours(loom, contact).find((c) => wiresAtContact(loom, c.id).length > 0);
	return ["from", next?.id];
}

/** The wire most easily taken for this one: same branch of the loom and base colour, then the more colours in common. */
function mostAlike(loom: Loom, wire: Wire, worked: ReadonlySet<string>): Wire | undefined {
	const alike = ({ colours, mm2 }: Wire) =>
		2 * colours.filter((colour) => wire.colours.includes(colour)).length + (mm2 === wire.mm2 ? 1 : 0);
	return [...wiresInBundle(loom, wire.bundle)]
		.filter((other) => other.id !== wire.id && !worked.has(other.id) && !other.marks.includes("pyrotechnic"))
		.filter((other) => wire.colours.length > 0 && other.colours[0] === wire.colours[0])
		.sort((x, y) => alike(y) - alike(x))[0];
}

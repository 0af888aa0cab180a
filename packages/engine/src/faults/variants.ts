/** The converted loom as it would be with one step of the recipe forgotten, or done on the wire beside the right one. */
import {
	cavityNeighbours,
	type Loom,
	type LoomTables,
	type RecipeStep,
	type Wire,
	wiresAtContact,
	wiresInBundle,
} from "../loom/index.js";
import { doneOtherwise, loomAs } from "../recipe/index.js";
import { ON as STEP_ON } from "./kinds/step-misplaced.js";

/** By the step's name; where it was done on another wire, by its name, `@` and the wire. */
export function variantsOf({ delivered, recipe, newParts }: LoomTables): Map<string, Loom> {
	const worked = new Set(recipe.flatMap(({ wire, other }) => [wire, other]));
	const beside = (id: string) => {
		const wire = delivered.wires.get(id);
		return wire && mostAlike(delivered, wire, worked)?.id;
	};
	const looms = doneOtherwise(delivered, recipe, newParts, (step) => {
		const { step: name } = step;
		// A bare end conducts nothing: leaving it bare changes nothing that is measured.
		const forgotten = step.kind === "isolate and stow" ? [] : [{ name, step: undefined }];
		// Cut, tapped, or its terminal moved in place of the right one.
		const [column, wire] = mistaken(delivered, step, beside);
		if (wire === undefined) return forgotten;
		return [...forgotten, { name: `${name}${STEP_ON}${wire}`, step: { ...step, [column]: wire } }];
	});
	return new Map([...looms].map(([name, loom]) => [name, loomAs(loom, "converted")]));
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

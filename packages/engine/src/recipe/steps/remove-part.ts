import { Checks } from "../checks.js";
import { needs, type StepDefinition } from "../step-definition.js";

/**
 * Takes a part and its contacts out. A connector's housing can go only once no part that
 * stays is plugged into it.
 */
export const removePart: StepDefinition = {
	kind: "remove part",
	does: "A part comes out; the wires that ended there have bare ends.",
	needs: [needs("part", "name the part to take out")],
	makes: () => [],
	apply: (draft, step) => {
		const checks = new Checks(draft, step);
		const part = checks.part();
		const others = new Set(draft.contactsHeldBy(step.part).map((contact) => contact.part));
		others.delete(step.part);
		if (part && others.size > 0)
			checks.fail(
				"part",
				`connector ${part.id} still holds contacts of ${[...others].join(", ")}`,
				"take those parts out first",
			);
		if (part && checks.misfits.length === 0) draft.removePart(part.id);
		return checks.misfits;
	},
};

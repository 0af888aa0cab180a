import { Checks } from "../checks.js";
import { newWire } from "../new-wire.js";
import { needs, needsLength, needsNew, needsSize, type StepDefinition } from "../step-definition.js";

/** Lays a new wire between two contacts or joints. */
export const addWire: StepDefinition = {
	kind: "add wire",
	does: "A new wire is laid between two contacts or joints.",
	needs: [
		needsNew(),
		needs("from", "name the contact or joint it starts from"),
		needs("to", "name the contact or joint it runs to"),
		needsSize(),
		needsLength(),
	],
	makes: (step) => [step.fresh],
	apply: (draft, step) => {
		const checks = new Checks(draft, step);
		const fresh = checks.newWire(step.fresh);
		const from = checks.place("from");
		const to = checks.place("to");
		if (step.from === step.to)
			checks.fail("to", `${step.to} is where it starts`, "name another contact or joint");
		if (!fresh || !from || !to || checks.misfits.length > 0) return checks.misfits;
		draft.addWire(newWire(step, from, to));
		return [];
	},
};

import { Checks } from "../checks.js";
import { newWire } from "../new-wire.js";
import { needs, needsLength, needsNew, needsSize, type StepDefinition } from "../step-definition.js";

/**
 * Links two contacts by a short wire. Unlike an added wire the link may share a terminal
 * with the wire that is there: that is what a bridge is for.
 */
export const bridge: StepDefinition = {
	kind: "bridge",
	does: "Two contacts are linked by a short wire.",
	needs: [
		needsNew(),
		needs("from", "name the first contact"),
		needs("to", "name the second contact"),
		needsSize(),
		needsLength(),
	],
	makes: (step) => [step.fresh],
	apply: (draft, step) => {
		const checks = new Checks(draft, step);
		const fresh = checks.newWire(step.fresh);
		const from = checks.contact("from");
		const to = checks.contact("to");
		if (from && from.id === to?.id)
			checks.fail("to", `${to.id} is the first contact too`, "name another contact");
		if (!fresh || !from || !to || checks.misfits.length > 0) return checks.misfits;
		draft.addWire(newWire(step, { at: "contact", contact: from.id }, { at: "contact", contact: to.id }));
		return [];
	},
};

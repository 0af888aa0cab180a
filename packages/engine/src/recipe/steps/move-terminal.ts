import { Checks } from "../checks.js";
import { needs, type StepDefinition } from "../step-definition.js";
import { sidesAt } from "../wire-ends.js";

/** Moves a terminal, with every wire crimped in it, from one cavity to another. */
export const moveTerminal: StepDefinition = {
	kind: "move terminal",
	does: "The terminal in one cavity goes to another, with the wire crimped in it.",
	needs: [
		needs("from", "name the contact whose terminal is moved"),
		needs("to", "name the contact it is moved to"),
	],
	makes: () => [],
	apply: (draft, step) => {
		const checks = new Checks(draft, step);
		const from = checks.contact("from");
		const to = from?.id === step.to ? undefined : checks.free("to", checks.contact("to"));
		if (from?.id === step.to) checks.fail("to", `${step.to} is where it is already`, "name another contact");
		const wires = from ? draft.wiresAt(from.id) : [];
		if (from && wires.length === 0)
			checks.fail("from", `${from.id} has no wire on it`, "name a contact with a wire crimped to it");
		if (checks.misfits.length > 0 || !from || !to) return checks.misfits;
		for (const wire of wires)
			for (const side of sidesAt(wire, "contact", from.id))
				draft.moveEnd(wire, side, { at: "contact", contact: to.id });
		return [];
	},
};

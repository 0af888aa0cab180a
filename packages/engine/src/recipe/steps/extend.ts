import type { WireEnd } from "../../loom/index.js";
import { Checks } from "../checks.js";
import { newWire } from "../new-wire.js";
import { needs, needsLength, needsNew, type StepDefinition } from "../step-definition.js";

/** Splices a wire's one loose end to a new wire that runs on to a contact or joint. */
export const extend: StepDefinition = {
	kind: "extend",
	does: "A wire's loose end is spliced to a new wire that runs on.",
	needs: [
		needs("wire", "name the wire with the loose end"),
		needs("to", "name the contact or joint the new wire runs to"),
		needsNew(),
		needs("joint", "give the splice a name"),
		needsLength(),
	],
	makes: (step) => [step.fresh, step.joint],
	apply: (draft, step) => {
		const checks = new Checks(draft, step);
		const wire = checks.wire("wire");
		const side = checks.looseSide("wire", wire);
		const to = checks.place("to");
		const fresh = checks.newWire(step.fresh);
		const splice = checks.newSplice();
		if (!wire || !side || !to || !fresh || !splice) return checks.misfits;
		const end: WireEnd = { at: "joint", joint: splice.id };
		draft.addJoint(splice);
		draft.moveEnd(wire, side, end);
		draft.addWire(newWire(step, end, to, wire));
		return [];
	},
};

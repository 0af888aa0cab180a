import { Checks } from "../checks.js";
import { newWire } from "../new-wire.js";
import { needs, needsLength, needsNew, needsSize, type StepDefinition } from "../step-definition.js";

const byNewWire = (step: { readonly wire: string }): boolean => step.wire === "";

/** Ties a wire's one loose end, or by a new wire a contact, to a ground point. */
export const tieToGround: StepDefinition = {
	kind: "tie to ground",
	does: "A loose end, or a contact by a new wire, is tied to a ground point.",
	needs: [
		needs("to", "name the ground point"),
		needs("from", "name the contact to tie to ground, or in `wire` the wire with the loose end", byNewWire),
		needsNew(byNewWire),
		needsSize(byNewWire),
		needsLength(byNewWire),
	],
	makes: (step) => (byNewWire(step) ? [step.fresh] : []),
	apply: (draft, step) => {
		const checks = new Checks(draft, step);
		const joint = checks.joint("to");
		if (joint && joint.kind !== "ground")
			checks.fail("to", `${joint.id} is a ${joint.kind}`, "name a joint of kind ground");
		if (byNewWire(step)) {
			const from = checks.place("from");
			if (from?.at === "joint") checks.fail("from", `${step.from} is a joint`, "name a contact");
			const fresh = checks.newWire(step.fresh);
			if (!joint || !from || !fresh || checks.misfits.length > 0) return checks.misfits;
			draft.addWire(newWire(step, from, { at: "joint", joint: joint.id }));
			return [];
		}
		if (step.from !== "")
			checks.fail(
				"from",
				`both wire (${step.wire}) and from (${step.from}) are given`,
				"give only one of the two",
			);
		if (step.fresh !== "")
			checks.fail(
				"new",
				`the end of ${step.wire} itself is tied, no new wire is made`,
				"leave it empty, or extend",
			);
		const wire = checks.wire("wire");
		const side = checks.looseSide("wire", wire);
		if (!joint || !wire || !side || checks.misfits.length > 0) return checks.misfits;
		draft.moveEnd(wire, side, { at: "joint", joint: joint.id });
		return [];
	},
};

import type { RecipeStep, Wire, WireEnd } from "../../loom/index.js";
import { Checks } from "../checks.js";
import type { Draft } from "../draft.js";
import { needs, type StepDefinition, tailName } from "../step-definition.js";
import type { Side } from "../touched.js";

/** Joins a wire's one loose end to a joint, to another loose end, or into the run of another wire. */
export const join: StepDefinition = {
	kind: "join",
	does: "A wire's loose end is joined to a joint, to another loose end, or tapped into another wire.",
	needs: [
		needs("wire", "name the wire with the loose end"),
		needs(
			"to",
			"name the joint it goes to, or in `other` the wire it is joined to",
			(step) => step.other === "",
		),
		needs("joint", "give the splice a name", (step) => step.to === ""),
	],
	makes: (step) =>
		[step.joint, ...(typeof step.at === "object" ? [tailName(step, step.other)] : [])].filter(
			(name) => name !== "",
		),
	apply: (draft, step) => {
		const checks = new Checks(draft, step);
		const wire = checks.wire("wire");
		const side = checks.looseSide("wire", wire);
		if (step.to !== "" && step.other !== "")
			checks.fail(
				"other",
				`both to (${step.to}) and other (${step.other}) are given`,
				"give only one of the two",
			);
		else if (step.to !== "") {
			const joint = checks.joint("to");
			if (wire && side && joint) draft.moveEnd(wire, side, { at: "joint", joint: joint.id });
		} else joinWires(draft, step, checks, wire, side);
		return checks.misfits;
	},
};

function joinWires(draft: Draft, step: RecipeStep, checks: Checks, wire?: Wire, side?: Side): void {
	const { at } = step;
	if (step.other === step.wire) {
		checks.fail("other", `${step.other} cannot be joined to itself`, "name another wire");
		return;
	}
	if (at === "from" || at === "to") {
		checks.fail("at", `is '${at}'`, "give the length at which to tap the other wire, or leave it empty");
		return;
	}
	const other = checks.wire("other");
	const splice = checks.newSplice();
	if (at === undefined) {
		const otherSide = checks.looseSide("other", other);
		if (!wire || !side || !other || !otherSide || !splice) return;
		const end: WireEnd = { at: "joint", joint: splice.id };
		draft.addJoint(splice);
		draft.moveEnd(wire, side, end);
		draft.moveEnd(other, otherSide, end);
	} else {
		const metres = checks.along(other, at.metres);
		const tail = checks.newWire(tailName(step, step.other));
		if (!wire || !side || !other || metres === undefined || !tail || !splice) return;
		const end: WireEnd = { at: "joint", joint: splice.id };
		draft.addJoint(splice);
		draft.moveEnd(wire, side, end);
		draft.split(other, metres, tail, end);
	}
}

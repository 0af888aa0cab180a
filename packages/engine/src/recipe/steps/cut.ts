import { Checks } from "../checks.js";
import { needs, type StepDefinition, tailName } from "../step-definition.js";
import { bare } from "../wire-ends.js";

/** Cuts a wire at a length from its `from` end, or takes it off at one end. */
export const cut: StepDefinition = {
	kind: "cut",
	does: "A wire is cut, or comes off at one end; the ends are bare.",
	needs: [
		needs("wire", "name the wire to cut"),
		{
			column: "at",
			wanted:
				"give the length from the wire's from end at which to cut, or `from` or `to` to take it off there",
			given: (step) => step.at !== undefined,
		},
	],
	makes: (step) => (typeof step.at === "object" ? [tailName(step, step.wire)] : []),
	apply: (draft, step) => {
		const checks = new Checks(draft, step);
		const wire = checks.wire("wire");
		const at = step.at;
		if (at === "from" || at === "to") {
			if (wire?.[at].at === "loose")
				checks.fail(
					"at",
					`the ${at} end of ${wire.id} is loose already`,
					"cut the other end, or leave the step out",
				);
			else if (wire) draft.moveEnd(wire, at, bare);
		} else if (at !== undefined) {
			const metres = checks.along(wire, at.metres);
			const tail = checks.newWire(tailName(step, step.wire));
			if (wire && metres !== undefined && tail) draft.split(wire, metres, tail, bare);
		}
		return checks.misfits;
	},
};

import { Checks } from "../checks.js";
import { needs, type StepDefinition } from "../step-definition.js";
import { endText, isStowed, looseSides } from "../wire-ends.js";

/** Isolates a wire's loose ends and ties them back. */
export const isolateAndStow: StepDefinition = {
	kind: "isolate and stow",
	does: "A wire's loose ends are isolated and tied back.",
	needs: [needs("wire", "name the wire with the loose end")],
	makes: () => [],
	apply: (draft, step) => {
		const checks = new Checks(draft, step);
		const wire = checks.wire("wire");
		if (!wire) return checks.misfits;
		const bareSides = looseSides(wire).filter((side) => !isStowed(wire[side]));
		if (bareSides.length === 0)
			checks.fail(
				"wire",
				`${wire.id} has no bare end, it runs from ${endText(wire.from)} to ${endText(wire.to)}`,
				"name a wire with a bare end",
			);
		for (const side of bareSides) draft.moveEnd(wire, side, { at: "loose", insulated: true });
		return checks.misfits;
	},
};

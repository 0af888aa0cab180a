/** Why the recipe room refuses a step. */
import { endName, formatWireEnd, type Loom, type RecipeStep, wiresAtContact } from "../../loom/index.js";
import type { Misfit } from "../../recipe/index.js";
import { SIDES } from "../nets.js";
import { type Reason, reason } from "./reasons.js";

/** A misfit of the recipe room as a reason: what is absent, what is in the way, what waits for a step left out. */
export function misfitReason(
	{ column, problem, text }: Misfit,
	step: RecipeStep,
	here: Loom,
	lacking: ReadonlyMap<string, string>,
): Reason {
	const subject = column === "new" ? step.fresh : String(step[column as keyof RecipeStep] ?? "");
	const maker = lacking.get(subject);
	if (maker !== undefined)
		return reason("waits", subject, "", "", `${subject} is made by step ${maker}, which cannot be done here`);
	if (problem.includes("already has wire")) {
		const wires = wiresAtContact(here, subject);
		const there = wires.map(({ id, circuit }) => (circuit === "" ? id : `${id} (${circuit})`)).join(", ");
		return reason("taken", subject, "free", there, `${subject} is taken here by ${there}`);
	}
	if (problem.startsWith("there is no "))
		return reason("absent", subject, subject, "", `${subject} is not in this car`);
	if (problem.includes("already"))
		return reason("there already", subject, "", subject, `${subject}: ${problem}`);
	if (problem.includes("has no loose end") || problem.includes("no wire on it")) {
		const wire = here.wires.get(subject);
		const ends = wire === undefined ? "" : SIDES.map((side) => formatWireEnd(wire[side])).join(" to ");
		return reason(
			"other",
			subject,
			"",
			ends || endName({ at: "joint", joint: subject }),
			`${subject}: ${problem}`,
		);
	}
	return reason("other", subject, "", "", text);
}

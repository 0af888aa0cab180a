import { type Contact, cavityFaults, type Part } from "../../loom/index.js";
import { Checks } from "../checks.js";
import type { Draft } from "../draft.js";
import { needs, type StepDefinition } from "../step-definition.js";

/** Fits one of the new parts with its contacts, or sets one of the new joints. */
export const fitPart: StepDefinition = {
	kind: "fit part",
	does: "A new part with its contacts is fitted, or a new joint is set.",
	needs: [needs("part", "name a part of new-parts.csv or a joint of new-joints.csv")],
	makes: (step) => [step.part],
	apply: (draft, step, fresh) => {
		const checks = new Checks(draft, step);
		const id = step.part;
		const part = fresh.parts.get(id);
		const joint = fresh.joints.get(id);
		if (draft.parts.has(id) || draft.joints.has(id))
			checks.fail(
				"part",
				`${id} is in the car already`,
				"take it out first, or give the new one another name",
			);
		if (part) {
			const contacts = [...fresh.contacts.values()].filter((contact) => contact.part === id);
			checkContacts(draft, checks, part, contacts);
			if (checks.misfits.length === 0) draft.addPart(part, contacts);
		} else if (joint) {
			if (checks.misfits.length === 0) draft.addJoint(joint);
		} else
			checks.fail("part", `${id} is not among the new parts`, "name one of new-parts.csv or new-joints.csv");
		return checks.misfits;
	},
};

function checkContacts(draft: Draft, checks: Checks, part: Part, contacts: readonly Contact[]): void {
	for (const { id } of contacts.filter((contact) => draft.contacts.has(contact.id)))
		checks.fail("part", `its contact ${id} is in the car already`, "name it otherwise in new-contacts.csv");
	const connectors = new Set(contacts.map((contact) => contact.connector));
	for (const connector of connectors)
		if (connector !== "" && connector !== part.id && !draft.parts.has(connector))
			checks.fail(
				"part",
				`its connector ${connector} is not in the car`,
				`fit ${connector} in an earlier step`,
			);
	// only the housings it is plugged into need to be looked at
	const neighbours = [...draft.contacts.kept().values()].filter(({ connector }) => connectors.has(connector));
	const kinds = new Map([...draft.parts.kept().values(), part].map(({ id, kind }) => [id, kind]));
	for (const fault of cavityFaults([...neighbours, ...contacts], kinds))
		if (contacts.includes(fault.contact))
			checks.fail(
				"part",
				`its contact ${fault.contact.id}: ${fault.problem}`,
				`give it ${fault.wanted} in new-contacts.csv`,
			);
}

import type { Condition, FunctionNeed, Loom, Monitor } from "../loom/index.js";

export type Stage = "delivered" | "converted";

/**
 * The loom with only what holds for it at a stage: monitors and functions of that stage whose
 * unit and contacts are there, and settings of conditions whose subjects are there.
 */
export function loomAs(loom: Loom, stage: Stage): Loom {
	const holds = (row: Monitor | FunctionNeed) =>
		(row.of === "" || row.of === stage) && hasContact(loom, row.contact) && hasContact(loom, row.reference);
	return {
		...loom,
		conditions: new Map([...loom.conditions].map(([id, condition]) => [id, present(loom, condition)])),
		monitors: loom.monitors.filter(
			(monitor) => holds(monitor) && loom.parts.has(monitor.unit) && hasContact(loom, monitor.twin),
		),
		functions: loom.functions.filter(holds),
	};
}

/** Empty: none is named, so none is absent. `PART.NAME!pin` is the part's own side of the contact. */
const hasContact = (loom: Loom, id: string): boolean =>
	id === "" || loom.contacts.has(id.replace(/!pin$/, ""));

function present(loom: Loom, condition: Condition): Condition {
	const settings = [...condition.settings].filter(
		([subject]) => loom.parts.has(subject) || hasContact(loom, subject),
	);
	return { ...condition, settings: new Map(settings) };
}

/** What a row of monitors.csv or functions.csv sees in a solved network. */
import { currentBetween, type Operating, type Probe, pinNode, probeValue } from "../../circuit/index.js";
import type { Loom, Quantity } from "../../loom/index.js";

/**
 * Volts or amperes; NaN where nothing joins the two points, undefined where the car lacks them.
 * @param unit whose ground is the second lead where the row names none; empty: the battery's minus
 */
export function quantityValue(point: Operating, row: Quantity, unit: string): number | undefined {
	const probe = probeOf(point, row, unit);
	return probe && probeValue(point, probe);
}

function probeOf({ circuit }: Operating, row: Quantity, unit: string): Probe | undefined {
	const { loom } = circuit;
	if (row.measures === "amps") return currentBetween(circuit, row.contact, row.reference);
	const nodeOf = (id: string) => circuit.node(pinNode(id.replace(/!pin$/, ""))) ?? circuit.node(id);
	const reference = row.reference || contactWith(loom, unit, "ground") || batteryMinus(loom);
	const a = nodeOf(row.contact);
	const b = reference === undefined ? -1 : nodeOf(reference);
	return a === undefined || b === undefined ? undefined : { kind: "volts", a, b };
}

function contactWith(loom: Loom, part: string, role: string): string | undefined {
	for (const contact of loom.contacts.values())
		if (contact.part === part && contact.role === role) return contact.id;
	return undefined;
}

function batteryMinus(loom: Loom): string | undefined {
	for (const contact of loom.contacts.values())
		if (contact.role === "-" && loom.parts.get(contact.part)?.kind === "battery") return contact.id;
	return undefined;
}

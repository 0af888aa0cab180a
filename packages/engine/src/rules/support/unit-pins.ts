/** Values and currents of pins. */
import { branchAmps, type Circuit, type Operating, pinNode, voltsAt } from "../../circuit/index.js";
import { deviceKinds } from "../../devices/index.js";
import type { Contact } from "../../loom/index.js";

/** A setting of a pin, its role's default where the table gives none; undefined where the role has no such setting. */
export function pinSetting(circuit: Circuit, contact: Contact, name: string): number | undefined {
	const kind = deviceKinds.get(circuit.loom.parts.get(contact.part)?.kind ?? "");
	return contact.values[name] ?? kind?.pinValues?.[contact.role]?.[name]?.default;
}

/** Amperes from the loom into the part at a contact. */
export function ampsInto(point: Operating, contact: string): number {
	const { circuit } = point;
	const pin = circuit.node(pinNode(contact));
	return (circuit.branchesOf.get(contact) ?? [])
		.filter((branch) => circuit.branches[branch]!.owner.what === "mated contact")
		.reduce(
			(sum, branch) => sum + (circuit.branches[branch]!.b === pin ? 1 : -1) * branchAmps(point, branch),
			0,
		);
}

/** Volts of a part's pin against a node; the body where none is given. */
export function pinVolts(point: Operating, contact: string, against = -1): number {
	return voltsAt(point.volts, point.circuit.node(pinNode(contact))!) - voltsAt(point.volts, against);
}

/** Is the unit awake and fed? */
export function isPowered(point: Operating, unit: string): boolean {
	return point.standing.automata.some(
		({ spec }, k) => spec.part === unit && spec.states[point.states[k]!] === "powered",
	);
}

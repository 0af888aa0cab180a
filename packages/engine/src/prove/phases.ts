/**
 * How the car stands while the sheet is taken: battery off and the plugs of the control units off, so that the loom
 * is measured alone; the same with one switch held; and all plugged in again.
 */
import { type Circuit, conditionOf, settingsOf } from "../circuit/index.js";
import { contactsInConnector, contactsOfPart, type Loom, type Part } from "../loom/index.js";
import { forbidden } from "../readings/index.js";
import { marked, restraintFuses } from "./restraints.js";
import type { Phase } from "./types.js";

export interface SwitchPhase extends Phase {
	readonly part: Part;
	readonly position: string;
}

export interface Phases {
	readonly bare: Phase;
	readonly held: readonly SwitchPhase[];
	readonly plugged: Phase;
}

export const CAUTIONS = {
	batteryOff:
		"Battery disconnected, minus first, and its clamps insulated. With restraints on the car wait the time its maker gives before any plug is touched.",
	meter:
		"Zero the ohmmeter with its leads. Back-probe or use test pins of the terminal's size; never spread a terminal.",
	plugs:
		"Touch bare metal before a control unit's plug is taken off, and keep its pins covered. Plugs of restraint units stay on.",
	throughUnits:
		"These readings pass through control units: digital meter only, its test current is small enough. Where the maker forbids it, leave the row out.",
} as const;

/** Plugs of control units that may be taken off: none that holds a contact of a circuit never measured. */
export function unitPlugs(loom: Loom): Part[] {
	const units = [...loom.parts.values()].filter((part) => part.kind === "control unit");
	const names = new Set(units.flatMap((unit) => contactsOfPart(loom, unit.id).map((c) => c.connector)));
	return [...names].flatMap((name) => {
		const plug = loom.parts.get(name);
		if (plug === undefined || marked(plug.marks)) return [];
		return contactsInConnector(loom, name).some(({ id }) => forbidden(loom, id)) ? [] : [plug];
	});
}

export function phasesOf(circuit: Circuit): Phases {
	const { loom } = circuit;
	const off = [...loom.parts.values()]
		.filter((part) => part.kind === "battery")
		.map((part): [string, string] => [part.id, "off"]);
	const fuses = restraintFuses(circuit);
	for (const fuse of fuses) off.push([fuse.id, "pulled"]);
	const plugs = unitPlugs(loom);
	const unplugged = [...off, ...plugs.map((plug): [string, string] => [plug.id, "unmated"])];
	const bare: Phase = {
		when: named(loom, unplugged),
		title: plugs.length > 0 ? "battery disconnected, plugs of the control units off" : "battery disconnected",
		prepare: [
			"Key out, all switches at rest, battery disconnected.",
			...fuses.map((fuse) => `Take out fuse ${fuse.id} (${fuse.label}): it feeds restraint parts.`),
			...plugs.map(
				(plug) => `Take off ${plug.label || "plug"} ${plug.id}${plug.place ? ` (${plug.place})` : ""}.`,
			),
		],
		cautions: [CAUTIONS.batteryOff, CAUTIONS.meter, ...(plugs.length > 0 ? [CAUTIONS.plugs] : [])],
	};
	const plugged: Phase = {
		when: named(loom, off),
		title: "battery disconnected, all plugged in",
		prepare: [
			"All switches at rest, battery still disconnected.",
			...fuses.map((fuse) => `Fuse ${fuse.id} stays out.`),
			...plugs.map((plug) => `Put ${plug.id} on and close its lock.`),
		],
		cautions: [CAUTIONS.batteryOff, CAUTIONS.meter, CAUTIONS.throughUnits],
	};
	return { bare, held: heldSwitches(loom, unplugged, bare), plugged };
}

/** One phase for each position of each switch but the one at rest. */
function heldSwitches(loom: Loom, unplugged: readonly [string, string][], bare: Phase): SwitchPhase[] {
	return [...loom.parts.values()]
		.filter((part) => part.kind === "switch")
		.filter((part) => contactsOfPart(loom, part.id).every(({ id }) => forbidden(loom, id) === undefined))
		.flatMap((part) =>
			part.positions.slice(1).map(({ name: position }): SwitchPhase => {
				const words = `${part.label || "switch"} ${part.id} at '${position}'`;
				return {
					part,
					position,
					when: conditionOf([...unplugged, [part.id, position]]),
					title: `${bare.title}, ${words}`,
					prepare: [`Set ${words}; all other switches at rest.`],
					cautions: bare.cautions,
				};
			}),
		);
}

/** The listed condition with just these settings, or the settings said in place. */
function named(loom: Loom, settings: readonly (readonly [string, string])[]): string {
	for (const id of loom.conditions.keys()) {
		const own = settingsOf(loom, id);
		if (own.size === settings.length && settings.every(([subject, state]) => own.get(subject) === state))
			return id;
	}
	return conditionOf(settings);
}

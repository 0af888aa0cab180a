/** The car as the proposal finds it: parts that go are gone, new ones fitted; and what may be worked on. */

import type { Loom, LoomTables, Wire } from "../loom/index.js";
import { applyRecipe, type Misfit } from "../recipe/index.js";
import { Costs } from "./costs.js";
import { step } from "./leg.js";
import { isBare, type LooseEnd, type Net, Nets } from "./nets.js";
import { Places, type Spot } from "./places.js";
import type { PlanTables, Step, WantedPart } from "./types.js";

export interface Situation {
	readonly delivered: Loom;
	readonly fresh: LoomTables["newParts"];
	/** After the parts have gone and come. */
	readonly base: Loom;
	readonly nets: Nets;
	readonly places: Places;
	readonly costs: Costs;
	/** Contacts and joints named by wanted circuits: their leads are not free for others. */
	readonly wanted: ReadonlySet<string>;
	readonly switched: ReadonlySet<string>;
	readonly permanent: ReadonlySet<string>;
	/** Rows that take parts out and fit new ones. */
	readonly partSteps: readonly Step[];
	/** Ground points that a proposal may make. */
	readonly mayFit: readonly WantedPart[];
}

/** Contacts behind fuses, by when they are live. */
export interface Feeds {
	readonly switched: ReadonlySet<string>;
	readonly permanent: ReadonlySet<string>;
}

/** @returns also the part steps that do not fit this car, of which nothing is done */
export function situation(
	tables: Pick<LoomTables, "delivered" | "newParts">,
	plan: PlanTables,
	feeds: Feeds,
): { at: Situation; misfits: readonly Misfit[] } {
	const { delivered, newParts: fresh } = tables;
	const partSteps = plan.parts
		.filter(({ want }) => want !== "may fit")
		.map((part) => partStep(part, delivered, fresh));
	const recipe = partSteps.map((one, k) => ({ ...one, step: String(k + 1), row: k + 2 }));
	const { loom: base, misfits } = applyRecipe(delivered, recipe, fresh);
	const wanted = new Set<string>();
	for (const { from, to } of plan.circuits) {
		wanted.add(from);
		if (to.at === "contact" || to.at === "joint") wanted.add(to.name);
	}
	const at: Situation = {
		delivered,
		fresh,
		base,
		nets: new Nets(base),
		places: new Places(delivered, fresh, plan.places),
		costs: new Costs(plan.costs),
		wanted,
		...feeds,
		partSteps,
		mayFit: plan.parts.filter(({ want }) => want === "may fit"),
	};
	return { at, misfits };
}

export function partStep(
	{ want, part, title, minutes }: WantedPart,
	{ parts }: Loom,
	fresh: LoomTables["newParts"],
): Step {
	const place = (parts.get(part) ?? fresh.parts.get(part) ?? fresh.joints.get(part))?.place ?? "";
	const kind = want === "remove" ? "remove part" : "fit part";
	return step(kind, title || `${part} ${want === "remove" ? "comes out" : "is fitted"}`, {
		part,
		place,
		minutes,
	});
}

/** Restraint wiring and wires that must not be joined are left as they are. */
export const untouchable = ({ marks }: Wire): boolean =>
	marks.includes("pyrotechnic") || marks.includes("no joints");

/** Where a bare end lies: where it was crimped before the part went. */
export function spotOfLoose({ delivered, places }: Situation, { wire, side }: LooseEnd): Spot {
	const was = delivered.wires.get(wire)?.[side];
	return was === undefined ? { place: "", zone: "" } : places.spotOfEnd(was);
}

/** How many bare ends a wire of the base loom has. */
export function bareEnds({ base }: Situation, wire: string): number {
	const row = base.wires.get(wire);
	return row === undefined ? 0 : Number(isBare(row.from)) + Number(isBare(row.to));
}

/** The one device contact of a lead whose other contacts are gone; undefined for any other net. */
export function onlyContact(net: Net): string | undefined {
	return net.contacts.length === 1 && net.grounds.length === 0 && net.wires.length > 0
		? net.contacts[0]
		: undefined;
}

/** True for a stud, on which any number of wires can be bolted. */
export function isBolted({ places, base, fresh }: Situation, id: string): boolean {
	const contact = places.contact(id);
	if (contact === undefined || contact.connector !== "") return false;
	const kind = (base.parts.get(contact.part) ?? fresh.parts.get(contact.part))?.kind ?? "";
	return kind !== "fuse" && kind !== "relay" && kind !== "connector";
}

/** True where a housing must not be opened. */
export function isRestraint({ places, base }: Situation, id: string): boolean {
	const contact = places.contact(id);
	const parts = [contact?.part, contact?.connector].map((name) => base.parts.get(name ?? ""));
	return parts.some((part) => part?.marks.includes("pyrotechnic"));
}

/** A lead taken away from its last device: nobody else can take up any of its ends, or tap it. */
export const wholeLead = (net: Net, contact: string): string[] => [
	`lead of ${contact}`,
	...net.loose.map(({ wire, side }) => `end ${wire} ${side}`),
	...net.wires.map(({ id }) => `run of ${id}`),
];

/** The car as the proposal finds it: parts that go are gone, new ones fitted; and what may be worked on. */

import type { Loom, LoomTables, Wire } from "../loom/index.js";
import { applyRecipe, type Misfit } from "../recipe/index.js";
import { Costs } from "./costs.js";
import { step } from "./leg.js";
import { isBare, type LooseEnd, type Net, Nets } from "./nets.js";
import { Places, type Spot } from "./places.js";
import { Pricer } from "./price.js";
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
	/** Rows that take parts out, fit new ones and part what must not be joined. */
	readonly partSteps: readonly Step[];
	/** What they pay once already, such as a housing opened: whatever else needs it has it for nothing. */
	readonly paid: ReadonlySet<string>;
	/** Where bare ends that a parting makes lie, by wire and side. */
	readonly partedAt: ReadonlyMap<string, Spot>;
	/** Ground points that a proposal may make. */
	readonly mayFit: readonly WantedPart[];
}

/** Contacts behind fuses, by when they are live. */
export interface Feeds {
	readonly switched: ReadonlySet<string>;
	readonly permanent: ReadonlySet<string>;
}

/** Cuts that part what must not be joined, and where their bare ends lie. */
export interface Parting {
	readonly steps: readonly Step[];
	readonly spots: ReadonlyMap<string, Spot>;
}

const NO_PARTING: Parting = { steps: [], spots: new Map() };

/** @returns also the part steps that do not fit this car, of which nothing is done */
export function situation(
	tables: Pick<LoomTables, "delivered" | "newParts">,
	plan: PlanTables,
	feeds: Feeds,
	parting: Parting = NO_PARTING,
): { at: Situation; misfits: readonly Misfit[] } {
	const { delivered, newParts: fresh } = tables;
	const parts = plan.parts.filter(({ want }) => want !== "may fit");
	const partSteps = [...parts.map((part) => partStep(part, delivered, fresh)), ...parting.steps];
	const recipe = partSteps.map((one, k) => ({ ...one, step: String(k + 1), row: k + 2 }));
	const { loom: base, misfits } = applyRecipe(delivered, recipe, fresh);
	const wanted = new Set<string>();
	for (const { from, to } of plan.circuits) {
		wanted.add(from);
		if (to.at === "contact" || to.at === "joint") wanted.add(to.name);
	}
	const places = new Places(delivered, fresh, plan.places);
	const costs = new Costs(plan.costs);
	const { shared } = new Pricer(costs, places, delivered, fresh).price(partSteps);
	const at: Situation = {
		delivered,
		fresh,
		base,
		nets: new Nets(base),
		places,
		costs,
		wanted,
		...feeds,
		partSteps,
		paid: new Set(shared.keys()),
		partedAt: parting.spots,
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
export function spotOfLoose({ delivered, places, partedAt }: Situation, { wire, side }: LooseEnd): Spot {
	const parted = partedAt.get(`${wire} ${side}`);
	if (parted !== undefined) return parted;
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

/** A recipe taken to another car: which steps can be done as they are, which need a decision, which cannot be done. */
import {
	endName,
	formatWireEnd,
	type Loom,
	type LoomTables,
	type NewParts,
	type RecipeStep,
	wiresAtContact,
} from "../../loom/index.js";
import { applyRecipe, type Misfit } from "../../recipe/index.js";
import { isBare, SIDES } from "../nets.js";
import { type MatchedWire, matchContact, matchWires } from "./match.js";
import { contactReasons, lengthReasons, type Reason, reason, wireReasons } from "./reasons.js";

export const VERDICTS = ["applies", "decide", "not here"] as const;
export type Verdict = (typeof VERDICTS)[number];

export interface Travelled {
	readonly step: RecipeStep;
	readonly verdict: Verdict;
	readonly reasons: readonly Reason[];
	/** The step as it would be done here: names of this car. */
	readonly here: RecipeStep;
}

export interface Journey {
	readonly steps: readonly Travelled[];
	/** The other car after the steps that can be done. */
	readonly loom: Loom;
	/** Wires that the steps leave with a bare end here: they need steps of their own. */
	readonly left: readonly string[];
}

/**
 * Both cars go through the recipe side by side, so that each step is held against what the step finds in the
 * car it was written for. A step that cannot be done here is left out, and the steps after it go on without it.
 * @param from the car the recipe was made for, with its new parts
 * @param to another car of its kind, as delivered
 */
export function travel(from: Pick<LoomTables, "delivered" | "newParts" | "recipe">, to: Loom): Journey {
	const fresh = from.newParts;
	let [before, here] = [from.delivered, to];
	/** Names that steps left out would have made, by name. */
	const lacking = new Map<string, string>();
	const pairs = matchWires(before, here);
	const names: Names = {
		here: new Map([...pairs].map(([id, { is }]) => [id, is.id])),
		delivered: new Map([...pairs.keys()].map((id) => [id, id])),
	};
	const steps: Travelled[] = [];
	const told = new Set<string>();
	for (const step of from.recipe) {
		const looked = new Look(step, before, here, fresh, pairs, names).done();
		const after = applyRecipe(before, [step], fresh).loom;
		const tried = applyRecipe(here, [looked.here], fresh);
		const reasons = [
			...looked.reasons.filter((one) => isNews(one, told)),
			...tried.misfits.map((one) => misfitReason(one, looked.here, here, lacking)),
		];
		const impossible = tried.misfits.length > 0 || reasons.some(({ kind }) => kind === "restraint");
		if (impossible) for (const name of madeBy(before, after)) lacking.set(name, step.step);
		else here = tried.loom;
		before = after;
		const verdict = impossible ? "not here" : reasons.length > 0 ? "decide" : "applies";
		steps.push({ step, verdict, reasons: impossible ? foremost(reasons) : reasons, here: looked.here });
	}
	const left = [...here.wires.values()]
		.filter((wire) => SIDES.some((side) => isBare(wire[side])))
		.map(({ id }) => id);
	return { steps, loom: here, left };
}

/** A difference of the cars is decided on once; how long a wire must be, at each step. */
function isNews({ kind, text }: Reason, told: Set<string>): boolean {
	if (kind === "place" || kind === "length" || kind === "restraint") return true;
	if (told.has(text)) return false;
	told.add(text);
	return true;
}

interface Names {
	/** Wires by their name in the recipe to their name here. */
	readonly here: Map<string, string>;
	/** Wires and pieces of wires, by their name in the recipe, to the wire as delivered. */
	readonly delivered: Map<string, string>;
}

/** What stops a step comes first. */
const foremost = (reasons: readonly Reason[]): Reason[] => {
	const stops = new Set(["absent", "taken", "there already", "waits", "restraint", "other"]);
	return [...reasons].sort((a, b) => Number(stops.has(b.kind)) - Number(stops.has(a.kind)));
};

function madeBy(before: Loom, after: Loom): string[] {
	return [
		...[...after.wires.keys()].filter((id) => !before.wires.has(id)),
		...[...after.joints.keys()].filter((id) => !before.joints.has(id)),
		...[...after.parts.keys()].filter((id) => !before.parts.has(id)),
		...[...after.contacts.keys()].filter((id) => !before.contacts.has(id)),
	];
}

/** One step looked at in both cars, and said in the names of the other one. */
class Look {
	readonly #step: RecipeStep;
	readonly #before: Loom;
	readonly #here: Loom;
	readonly #fresh: NewParts;
	readonly #pairs: ReadonlyMap<string, MatchedWire>;
	readonly #names: Names;
	readonly #reasons: Reason[] = [];

	constructor(
		step: RecipeStep,
		before: Loom,
		here: Loom,
		fresh: NewParts,
		pairs: ReadonlyMap<string, MatchedWire>,
		names: Names,
	) {
		this.#step = step;
		this.#before = before;
		this.#here = here;
		this.#fresh = fresh;
		this.#pairs = pairs;
		this.#names = names;
	}

	done(): { here: RecipeStep; reasons: readonly Reason[] } {
		const step = this.#step;
		const tapped = step.kind === "join" && step.other !== "";
		const wire = this.#wire(step.wire, !tapped);
		const other = this.#wire(step.other, tapped);
		const worked = tapped ? other : wire;
		const at = this.#at(worked);
		const here: RecipeStep = {
			...step,
			wire: wire?.id ?? step.wire,
			other: other?.id ?? step.other,
			at,
			from: this.#place(step.from),
			to: this.#place(step.to),
		};
		this.#part(step.part);
		this.#tail(step, here, worked?.turned === true);
		return { here, reasons: this.#reasons };
	}

	#contactOf = (id: string): string => {
		const contact = this.#before.contacts.get(id);
		return (contact && matchContact(contact, this.#here)?.id) ?? id;
	};

	/** @param worked whether the step's `at` is along this wire */
	#wire(id: string, worked: boolean): { id: string; turned: boolean; is: number } | undefined {
		const pair = this.#pairs.get(this.#names.delivered.get(id) ?? "");
		const name = this.#names.here.get(id);
		if (pair === undefined || name === undefined) return undefined;
		this.#reasons.push(...wireReasons(pair.was, pair.is, pair.turned, this.#contactOf));
		if (worked && typeof this.#step.at === "object") this.#reasons.push(...lengthReasons(pair.was, pair.is));
		if (pair.is.marks.includes("pyrotechnic"))
			this.#reasons.push(
				reason(
					"restraint",
					id,
					"",
					name,
					`${name} belongs to a restraint circuit here: maker's procedure only`,
				),
			);
		return { id: name, turned: pair.turned, is: this.#here.wires.get(name)?.metres ?? pair.is.metres };
	}

	/** A place along the wire keeps its distance from the same contact. */
	#at(wire: { turned: boolean; is: number } | undefined): RecipeStep["at"] {
		const { at } = this.#step;
		if (at === undefined || wire === undefined || !wire.turned) return at;
		if (at === "from") return "to";
		return at === "to" ? "from" : { metres: wire.is - at.metres };
	}

	/** The halves of a cut wire: what is the near one there may be the far one here. */
	#tail(step: RecipeStep, here: RecipeStep, turned: boolean): void {
		if (typeof step.at !== "object") return;
		const cut = step.kind === "join" ? step.other : step.wire;
		const cutHere = step.kind === "join" ? here.other : here.wire;
		const [tail, tailHere] = [step.fresh || `${cut}+b`, here.fresh || `${cutHere}+b`];
		const { here: names, delivered } = this.#names;
		names.set(cut, turned ? tailHere : cutHere);
		names.set(tail, turned ? cutHere : tailHere);
		delivered.set(tail, delivered.get(cut) ?? "");
	}

	#place(id: string): string {
		const joint = this.#before.joints.get(id);
		if (joint !== undefined) {
			const is = this.#here.joints.get(id);
			if (is !== undefined && is.place !== joint.place)
				this.#reasons.push(
					reason("place", id, joint.place, is.place, `${id}: was ${joint.place}, here ${is.place}`),
				);
			return id;
		}
		const was = this.#before.contacts.get(id);
		if (was === undefined || this.#fresh.contacts.has(id)) return id;
		const is = matchContact(was, this.#here);
		if (is === undefined) return id;
		const found = contactReasons(was, is, this.#before, this.#here);
		// Where a lead ends matters to a new wire's length; a terminal that only moves within its housing does not travel.
		const laid = this.#step.metres !== undefined;
		this.#reasons.push(...found.filter(({ kind }) => kind !== "place" || laid));
		return is.id;
	}

	#part(id: string): void {
		const [was, is] = [this.#before.parts.get(id), this.#here.parts.get(id)];
		if (was === undefined || is === undefined || was.kind === is.kind) return;
		this.#reasons.push(reason("part", id, was.kind, is.kind, `${id}: was a ${was.kind}, here a ${is.kind}`));
	}
}

/** A misfit of the recipe room as a reason: what is absent, what is in the way, what waits for a step left out. */
function misfitReason(
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

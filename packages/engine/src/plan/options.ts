/** Every way to make each wanted circuit, with its price and what it needs. */
import { AccessFinder, type SideOf } from "./access.js";
import { type Detachment, detachmentsOf } from "./detachments.js";
import { priceOf } from "./option-price.js";
import { optionsOf } from "./routes.js";
import { runsOf } from "./runs.js";
import { sideOf } from "./sides.js";
import { partStep, type Situation } from "./situation.js";
import type { Facility, Option, Step, WantedCircuit } from "./types.js";
import { undominated } from "./undominated.js";

export interface Choices {
	readonly options: readonly Option[];
	readonly facilities: readonly Facility[];
	/** Options that are never better than another, left out. */
	readonly dominated: number;
}

/** A circuit for which nothing can be done, with why. */
export interface Hopeless {
	readonly circuit: string;
	readonly why: string;
}

/**
 * @param keepAll also options that can be neither best nor second best
 * @returns the choices; circuits that have none are named in `hopeless`
 */
export function choicesOf(
	at: Situation,
	circuits: readonly WantedCircuit[],
	keepAll = false,
): Choices & { hopeless: Hopeless[] } {
	const price = (steps: readonly Step[]) => priceOf(at, steps);
	const sides = circuits.map((circuit) => [sideOf(at, circuit, true), sideOf(at, circuit, false)] as const);
	const detachments = detachmentsOfAll(at, circuits, sides, price);
	const byNet = new Map<string, Detachment[]>();
	for (const one of detachments) byNet.set(one.net.id, [...(byNet.get(one.net.id) ?? []), one]);
	const finder = new AccessFinder(at, byNet);
	const runs = runsOf(at, detachments);
	const usesOf = new Map(detachments.map(({ facility: { id, uses } }) => [id, uses]));
	/** One lead is parted in one way only. */
	const goTogether = (needs: readonly string[]): boolean => {
		const used = needs.flatMap((id) => usesOf.get(id) ?? []);
		return new Set(used).size === used.length;
	};
	const hopeless: Hopeless[] = [];
	let dominated = 0;
	const options = circuits.flatMap((circuit, k) => {
		const [from, to] = sides[k]!;
		if (typeof from === "string" || typeof to === "string") {
			hopeless.push({
				circuit: circuit.target,
				why: [from, to].find((side) => typeof side === "string") as string,
			});
			return [];
		}
		const all = optionsOf(at, circuit, from, to, finder, runs, price).filter(({ needs }) =>
			goTogether(needs),
		);
		if (all.length === 0) hopeless.push({ circuit: circuit.target, why: whyNone(circuit) });
		const kept = keepAll ? all : undominated(at, all);
		dominated += all.length - kept.length;
		return kept;
	});
	const made = at.mayFit.map((part): Facility => {
		const steps = [partStep(part, at.delivered, at.fresh)];
		return {
			id: `fit ${part.part}`,
			text: part.title || `${part.part} is made`,
			steps,
			...price(steps),
			uses: [],
		};
	});
	return {
		options,
		facilities: [...detachments.map(({ facility }) => facility), ...made],
		dominated,
		hopeless,
	};
}

const whyNone = ({ mostJoints, mm2 }: WantedCircuit): string =>
	`no way was found with ${mostJoints === undefined ? "the general limit of" : `at most ${mostJoints}`} joints and wires from ${mm2} mm2 on; perhaps a place is missing in places.csv, or a cavity is taken`;

/** Leads of wanted contacts that may be parted, each where it passes what it is to be joined with. */
function detachmentsOfAll(
	at: Situation,
	circuits: readonly WantedCircuit[],
	sides: readonly (readonly (SideOf | string)[])[],
	price: (steps: readonly Step[]) => Pick<Facility, "own" | "shared">,
): Detachment[] {
	const toward = new Map<string, string[]>();
	circuits.forEach((_, k) => {
		const [a, b] = sides[k]!;
		for (const [one, other] of [
			[a, b],
			[b, a],
		]) {
			if (typeof one !== "object" || one.at !== "contact") continue;
			const places = toward.get(one.contact) ?? [];
			if (typeof other === "object") {
				if (other.at === "contact") places.push(at.places.ofContact(other.contact));
				if (other.at === "joint") places.push(at.places.joint(other.joint)?.place ?? "");
			}
			toward.set(one.contact, places);
		}
	});
	return [...toward].flatMap(([contact, places]) => detachmentsOf(at, contact, places, price));
}

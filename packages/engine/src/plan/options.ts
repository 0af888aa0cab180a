/** Every way to make each wanted circuit, with its price and what it needs. */

import { type Access, AccessFinder, type Detachment, detachmentsOf, type SideOf } from "./access.js";
import { NOTHING, plus, times } from "./costs.js";
import { type Attach, isNewName, type Leg, LegMaker, newWireName, step } from "./leg.js";
import type { Net } from "./nets.js";
import { anchorOf } from "./places.js";
import { Pricer } from "./price.js";
import { type Run, runsOf } from "./runs.js";
import { isRestraint, partStep, type Situation } from "./situation.js";
import type { Facility, Option, Price, Step, WantedCircuit } from "./types.js";

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
		const all = optionsOf(at, circuit, from, to, finder, runs, price);
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

/** One side of a circuit, or why there is none. */
function sideOf(at: Situation, { from, to }: WantedCircuit, first: boolean): SideOf | string {
	if (first || to.at === "contact") {
		const contact = first ? from : to.at === "contact" ? to.name : "";
		return at.base.contacts.has(contact)
			? { at: "contact", contact }
			: `${contact} is not in the car once the parts of the targets have gone and come`;
	}
	if (to.at === "joint") return { at: "joint", joint: to.name };
	const ground = /^(?:(body|engine) )?ground$/.exec(to.at);
	if (ground) return { at: "ground", metal: ground[1] ?? "" };
	const { nets } = at;
	if (to.at === "function") {
		// Rows that ask for something to be there; those that ask for nothing say where it must not come.
		const needs = at.base.functions.filter((need) => need.function === to.name && need.low !== undefined);
		const found = new Set(needs.flatMap(({ contact }) => nets.ofContact(contact) ?? []));
		return found.size === 1
			? { at: "nets", nets: [...found] }
			: `the contacts of function ${to.name} lie on ${found.size} circuits; name one of its contacts`;
	}
	const contacts = to.at === "switched feed" ? at.switched : at.permanent;
	const found = new Set([...contacts].flatMap((id) => nets.ofContact(id) ?? []));
	return found.size > 0 ? { at: "nets", nets: [...found] } : `the car has no ${to.at} behind a fuse`;
}

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

/** The steps' price; joints that the steps themselves make are nobody else's. */
function priceOf(at: Situation, steps: readonly Step[]): { own: Price; shared: Map<string, Price> } {
	const priced = new Pricer(at.costs, at.places, at.base, at.fresh).price(steps);
	let own = priced.own;
	const shared = new Map<string, Price>();
	for (const [key, price] of priced.shared) {
		const [, joint = ""] = /^joint (.*)$/.exec(key) ?? [];
		if (isNewName(joint)) own = plus(own, price);
		else if (!at.paid.has(key)) shared.set(key, price);
	}
	return { own, shared };
}

function optionsOf(
	at: Situation,
	circuit: WantedCircuit,
	from: SideOf,
	to: SideOf,
	finder: AccessFinder,
	runs: readonly Run[],
	price: (steps: readonly Step[]) => { own: Price; shared: Map<string, Price> },
): Option[] {
	const legs = new LegMaker(circuit, at.places, at.costs);
	const fixedFrom = finder.of(from, circuit, []);
	const fixedTo = finder.of(to, circuit, []);
	const placesOf = (found: readonly Access[]) => [...new Set(found.map(({ spot }) => anchorOf(spot)))];
	const fromPoints = finder.of(from, circuit, placesOf(fixedTo));
	const toPoints = finder.of(to, circuit, placesOf(fixedFrom));
	const most = circuit.mostJoints ?? at.costs.row("most joints").value;
	const found: Option[] = [
		...reused(at, circuit, from, to, fromPoints),
		...bridged(at, circuit, from, to, price),
	];
	const add = (a: Access, b: Access, parts: readonly Leg[], run?: Run) => {
		const joints = parts.reduce((sum, leg) => sum + leg.joints, 0);
		if (joints > most) return;
		const [first, second] = parts.map((leg) => leg.steps);
		const work = run?.steps ?? [];
		const steps = [...a.steps, ...b.steps];
		if (run?.freed === "from") steps.push(...(second ?? []), ...work, ...(first ?? []));
		else if (run?.freed === "to") steps.push(...(first ?? []), ...work, ...(second ?? []));
		else steps.push(...work, ...(first ?? []), ...(second ?? []));
		const { own, shared } = price(steps);
		const ends = [...a.ends, ...b.ends, ...(run?.ends ?? [])];
		found.push({
			circuit: circuit.target,
			way: wayOf(a, b, run, parts),
			text: textOf(a, b, run),
			steps: steps.map((one) => ({ ...one, title: `${circuit.title || circuit.target}: ${one.title}` })),
			own: plus(own, times(at.costs.work("isolate"), -taken(ends))),
			shared,
			uses: [...a.uses, ...b.uses, ...(run?.uses ?? [])],
			needs: [...new Set([...a.needs, ...b.needs, ...(run?.needs ?? [])])],
			bars: [...new Set([...a.bars, ...b.bars])],
			joints,
			allNew: ends.length === 0,
			lies: circuit.pair === "" ? "" : [a.lies, run?.pairs ?? "", b.lies].join("|"),
		});
	};
	for (const a of fromPoints)
		for (const b of toPoints) {
			if (clash(a, b)) continue;
			const leg = legs.between(a, b);
			if (leg) add(a, b, [leg]);
		}
	for (const run of runs) {
		if (run.mm2 < circuit.mm2 || (run.pairs !== "" && circuit.pair === "")) continue;
		const { from: u, to: v } = run;
		for (const a of fixedFrom) {
			if (a.uses.some((one) => run.uses.includes(one)) || a.bars.some((one) => run.needs.includes(one)))
				continue;
			const first = legs.between(a, u, true);
			if (first === undefined || first.joints > most) continue;
			for (const b of fixedTo) {
				if (clash(a, b) || b.uses.some((one) => run.uses.includes(one))) continue;
				if (b.bars.some((one) => run.needs.includes(one))) continue;
				const second = legs.between(v, b, true);
				if (second) add(a, b, [first, second], run);
			}
		}
	}
	return found;
}

/** The two sides are joined already, by wires large enough. */
function reused(
	at: Situation,
	circuit: WantedCircuit,
	from: SideOf,
	to: SideOf,
	points: readonly Access[],
): Option[] {
	if (from.at !== "contact") return [];
	const net = at.nets.ofContact(from.contact);
	const there = net !== undefined && netsOf(at, to).includes(net);
	if (!there || net === undefined) return [];
	const least = Math.min(...net.wires.map(({ mm2 }) => mm2));
	if (least < circuit.mm2) return [];
	const bars = [...new Set(points.flatMap((point) => [...point.bars, ...point.needs]))];
	const rest = {
		steps: [],
		own: NOTHING,
		shared: new Map(),
		uses: [],
		needs: [],
		bars,
		joints: 0,
		allNew: false,
		lies: "",
	};
	return [{ circuit: circuit.target, way: "reuse", text: "joined as delivered", ...rest }];
}

/** A link between two contacts of one housing, where one has a wire: its terminal takes the link as well. */
function bridged(
	at: Situation,
	circuit: WantedCircuit,
	from: SideOf,
	to: SideOf,
	price: (steps: readonly Step[]) => { own: Price; shared: Map<string, Price> },
): Option[] {
	if (from.at !== "contact" || to.at !== "contact") return [];
	const [a, b] = [from.contact, to.contact];
	const housing = at.places.contact(a)?.connector;
	const wired = [a, b].map((id) => (at.nets.ofContact(id)?.wires.length ?? 0) > 0);
	if (!housing || at.places.contact(b)?.connector !== housing || wired[0] === wired[1]) return [];
	if (at.nets.isInLine(a) || isRestraint(at, a)) return [];
	const { mm2, colours, target, pair } = circuit;
	const place = at.places.ofContact(a);
	const link = {
		from: a,
		to: b,
		fresh: newWireName(target, 0),
		mm2,
		colours,
		metres: 0.1,
		place,
		circuit: target,
		pair,
	};
	const words = `link from ${a} to ${b} in the plug`;
	const steps = [step("bridge", `${circuit.title || target}: ${words}`, link)];
	const rest = { needs: [], bars: [], joints: 0, allNew: true, lies: pair === "" ? "" : "bridge" };
	const uses = [`cavity ${wired[0] ? b : a}`];
	return [
		{
			circuit: target,
			way: "new",
			text: words,
			steps,
			...price(steps),
			uses,
			...rest,
		},
	];
}

function netsOf(at: Situation, side: SideOf): readonly (Net | undefined)[] {
	if (side.at === "nets") return side.nets;
	if (side.at === "contact") return [at.nets.ofContact(side.contact)];
	if (side.at === "joint") return [at.nets.ofJoint(side.joint)];
	return at.nets.all.filter((net) => net.grounds.length > 0);
}

/** Two points that cannot both be taken: the same thing twice, or one that the other does away with. */
function clash(a: Access, b: Access): boolean {
	return (
		a.uses.some((one) => b.uses.includes(one)) ||
		a.needs.some((one) => b.bars.includes(one)) ||
		b.needs.some((one) => a.bars.includes(one)) ||
		nameOf(a.attach) === nameOf(b.attach)
	);
}

const nameOf = (attach: Attach): string =>
	attach.by === "cavity"
		? attach.contact
		: attach.by === "joint"
			? attach.joint
			: `${attach.by} ${attach.wire}`;

/** Wires that need not be isolated: all their bare ends are taken up. */
function taken(ends: readonly { readonly wire: string; readonly of: number }[]): number {
	const counts = new Map<string, number>();
	for (const { wire } of ends) counts.set(wire, (counts.get(wire) ?? 0) + 1);
	return [...counts].filter(([wire, count]) => ends.find((end) => end.wire === wire)!.of === count).length;
}

function wayOf(a: Access, b: Access, run: Run | undefined, legs: readonly Leg[]): Option["way"] {
	if (a.way === "move" || b.way === "move") return "move";
	if ((run !== undefined && run.ends.length > 0) || a.way === "extend" || b.way === "extend")
		return legs.every(({ metres }) => metres === 0) ? "join" : "extend";
	return a.way === "join" || b.way === "join" ? "join" : "new";
}

function textOf(a: Access, b: Access, run: Run | undefined): string {
	const words = ({ attach, steps }: Access) => {
		const moved = steps.find(({ kind }) => kind === "move terminal");
		if (moved) return `${moved.to} with the lead moved from ${moved.from}`;
		if (attach.by === "tap") return `${attach.wire}, ${attach.at} m along it`;
		if (attach.by === "bare") return `the bare end of ${attach.wire}`;
		return attach.by === "joint" ? attach.joint : attach.contact;
	};
	return `${words(a)} to ${words(b)}${run ? ` by ${run.text}` : ""}`;
}

/**
 * Without options that two others are never worse than: such an option is neither the best nor, the best
 * forbidden, the second best. Options of the same words are forbidden together. One is never worse than another if it costs no more even where it pays all
 * its shared costs alone, and asks for nothing that the other does not ask for as well.
 */
function undominated(at: Situation, options: readonly Option[]): Option[] {
	const within = (a: readonly string[], b: readonly string[]) => a.every((one) => b.includes(one));
	const total = (price: Price) => at.costs.total(price);
	const better = (a: Option, b: Option): boolean => {
		if (a.lies !== b.lies || !within(a.uses, b.uses) || !within(a.needs, b.needs) || !within(a.bars, b.bars))
			return false;
		if (b.allNew && !a.allNew) return false;
		let cost = total(a.own);
		for (const [key, price] of a.shared) if (!b.shared.has(key)) cost += total(price);
		return cost <= total(b.own);
	};
	const sorted = [...options].sort((a, b) => total(a.own) - total(b.own));
	// Of two that are as good as each other, the first one counts.
	return sorted.filter((one, k) => {
		const by = new Set<string>();
		sorted.forEach((other, j) => {
			if (j !== k && better(other, one) && (j < k || !better(one, other))) by.add(other.text);
		});
		return by.size < 2 && !by.has(one.text);
	});
}

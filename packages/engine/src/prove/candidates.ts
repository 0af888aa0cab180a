/**
 * Readings to choose from: along runs of conductor from end to end, through loads and sensors between two runs, to
 * the battery's clamps, to neighbouring cavities, and across each switch in each of its positions.
 */
import { type Circuit, pinNode, type Standing } from "../circuit/index.js";
import { cavityNeighbours, contactsOfPart, type Loom } from "../loom/index.js";
import type { Phases, SwitchPhase } from "./phases.js";
import { probePoints, type Run, runsOf } from "./runs.js";
import type { Candidate, Phase } from "./types.js";

/** In a run of up to so many ends every pair is offered. */
const ALL_PAIRS = 20;
/** Ends of a run that stand for it in readings through a load. */
const ENDS_OF_LOAD = 4;
/** Least siemens of a device's element that is a reading through it: beyond, an ohmmeter reads next to nothing. */
const LEAST_SIEMENS = 1e-6;

export interface Offer {
	readonly phases: readonly Phase[];
	readonly candidates: readonly Candidate[];
}

type Pair = readonly [from: string, to: string];

/** Every reading offered, none of a circuit never measured. Phase numbers are places in `phases`. */
export function offer(circuit: Circuit, { bare, held, plugged }: Phases): Offer {
	const { loom } = circuit;
	const phases: Phase[] = [];
	const candidates: Candidate[] = [];
	const add = (phase: Phase, pairs: Iterable<Pair>) => {
		const number = phases.push(phase) - 1;
		const seen = new Set<string>();
		for (const [from, to] of pairs) {
			const key = from < to ? `${from}|${to}` : `${to}|${from}`;
			if (from === to || seen.has(key)) continue;
			seen.add(key);
			candidates.push({ what: "ohms", from, to, when: phase.when, phase: number });
		}
	};
	const points = probePoints(circuit);
	const posts = batteryPosts(loom, points);
	const rest = circuit.standing(bare.when);
	const runs = runsOf(circuit, rest);
	const toPosts = points.flatMap((id) => posts.map((post): Pair => [id, post]));
	const neighbours = neighbourPairs(loom, points);
	add(bare, [
		...toPosts,
		...neighbours,
		...runs.flatMap(alongRun),
		...throughLoads(circuit, rest, runs, posts),
	]);
	for (const phase of held) add(phase, acrossSwitch(circuit, phase, runs, posts));
	const whole = circuit.standing(plugged.when);
	if (plugged.when !== bare.when)
		add(plugged, [...toPosts, ...neighbours, ...throughLoads(circuit, whole, runs, posts)]);
	return { phases, candidates };
}

/** Clamps of the battery, minus first. */
function batteryPosts(loom: Loom, points: readonly string[]): string[] {
	const posts = points.filter((id) => loom.parts.get(loom.contacts.get(id)!.part)?.kind === "battery");
	return posts.sort(
		(x, y) => Number(loom.contacts.get(y)!.role === "-") - Number(loom.contacts.get(x)!.role === "-"),
	);
}

function neighbourPairs(loom: Loom, points: readonly string[]): Pair[] {
	const known = new Set(points);
	return points.flatMap((id) =>
		cavityNeighbours(loom, loom.contacts.get(id)!)
			.filter((next) => id < next.id && known.has(next.id))
			.map((next): Pair => [id, next.id]),
	);
}

/**
 * Pairs of a run's ends. In a walk's order each end with the one half the run further on: every piece of the run
 * lies between the two of some pair, and no set of pairs that does so is smaller.
 */
function alongRun({ ends }: Run): Pair[] {
	const n = ends.length;
	const pairs: Pair[] = [];
	const half = Math.floor(n / 2);
	const far = [1, 2, half - 2, half - 1, half, half + 1, half + 2];
	for (let i = 0; i < n; i++)
		if (n <= ALL_PAIRS) for (let j = i + 1; j < n; j++) pairs.push([ends[i]!, ends[j]!]);
		else for (const step of far) pairs.push([ends[i]!, ends[(i + step) % n]!]);
	return pairs;
}

/** Through each load or sensor: from an end of the run at its one pin to an end of that at the other. */
function throughLoads(
	circuit: Circuit,
	standing: Standing,
	runs: readonly Run[],
	posts: readonly string[],
): Pair[] {
	const runOf = new Map(runs.flatMap((run) => run.contacts.map((id) => [id, run] as const)));
	return pinsJoined(circuit, standing).flatMap(([one, two]): Pair[] => {
		const first = runOf.get(one);
		const second = runOf.get(two);
		if (!first || !second || first === second) return [];
		return across(standFor(first, one, posts), standFor(second, two, posts));
	});
}

/** Contacts of one part that its own elements join; control units, which join nearly all of theirs, are left out. */
function pinsJoined(circuit: Circuit, { siemens }: Standing): Pair[] {
	const { loom, branches } = circuit;
	return [...loom.parts.values()].flatMap((part): Pair[] => {
		if (part.kind === "control unit") return [];
		const own = (circuit.branchesOf.get(part.id) ?? []).filter(
			(k) => branches[k]!.owner.what === "device" && siemens[k]! >= LEAST_SIEMENS,
		);
		const group = new Map<number, Set<number>>();
		for (const k of own) {
			const { a, b } = branches[k]!;
			const joined = new Set([a, b, ...(group.get(a) ?? []), ...(group.get(b) ?? [])]);
			for (const node of joined) group.set(node, joined);
		}
		const pins = contactsOfPart(loom, part.id).map(({ id }) => [id, circuit.node(pinNode(id))!] as const);
		return pins.flatMap(([one, at], k) =>
			pins.slice(k + 1).flatMap(([two, to]): Pair[] => (group.get(at)?.has(to) ? [[one, two]] : [])),
		);
	});
}

/** Across what a switch closes in this position and in none before it. */
function acrossSwitch(
	circuit: Circuit,
	{ part, position }: SwitchPhase,
	runs: readonly Run[],
	posts: readonly string[],
): Pair[] {
	const at = part.positions.findIndex(({ name }) => name === position);
	const name = (join: readonly [string, string]) => join.join("-");
	const before = new Set(part.positions.slice(0, at).flatMap(({ joins }) => joins.map(name)));
	const contacts = new Map(contactsOfPart(circuit.loom, part.id).map(({ role, id }) => [role, id]));
	const runOf = (id: string) => runs.find((run) => run.contacts.includes(id));
	return part.positions[at]!.joins.filter((join) => !before.has(name(join))).flatMap(([a, b]): Pair[] => {
		const one = contacts.get(a);
		const two = contacts.get(b);
		const first = one && runOf(one);
		const second = two && runOf(two);
		return first && second ? across(standFor(first, one, posts), standFor(second, two, posts)) : [];
	});
}

const across = (some: readonly string[], others: readonly string[]): Pair[] =>
	some.flatMap((from) => others.map((to): Pair => [from, to]));

/** Contacts that stand for a run: the device's own, some of its ends, or a battery's clamp that is on it. */
function standFor(run: Run, own: string, posts: readonly string[]): string[] {
	const clamps = posts.filter((post) => run.contacts.includes(post));
	if (clamps.length > 0) return [own, ...clamps];
	const step = Math.max(1, run.ends.length / ENDS_OF_LOAD);
	const some = new Set([own]);
	for (let k = 0; k < run.ends.length; k += step) some.add(run.ends[Math.floor(k)]!);
	return [...some];
}

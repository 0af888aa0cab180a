/** Readings worth considering next: at the contacts that the leading faults concern, in conditions already in play. */
import type { Circuit } from "../circuit/index.js";
import { type Loom, type Wire, wiresAtContact } from "../loom/index.js";
import { forbidden, type Question } from "../readings/index.js";
import { batteryMinus } from "./quantities.js";
import { keyOf } from "./reader.js";
import type { Evidence } from "./types.js";
import type { Weighed } from "./weighing.js";

/** Most contacts looked at: those of the leading faults first. */
const MOST_CONTACTS = 60;
/** Most conditions a candidate reading may be taken in. */
const MOST_CONDITIONS = 5;

function ends(wire: Wire): string[] {
	return [wire.from, wire.to].flatMap((end) => (end.at === "contact" ? [end.contact] : []));
}

/** Contacts on a fault's path, and what its wires lead to. */
function contactsOf(loom: Loom, path: readonly string[]): string[] {
	const found: string[] = [];
	for (const id of path) {
		if (loom.contacts.has(id)) found.push(id, ...wiresAtContact(loom, id).flatMap(ends));
		const wire = loom.wires.get(id);
		if (wire) found.push(...ends(wire));
	}
	return found;
}

/** Conditions in which no source works: for the ohmmeter. */
export function deadCondition(circuit: Circuit): string | undefined {
	const sources = [...circuit.loom.parts.values()].filter(
		(p) => p.kind === "battery" || p.kind === "generator",
	);
	return [...circuit.loom.conditions.keys()].find((id) => {
		const { siemens } = circuit.standing(id);
		return sources.every((p) => (circuit.branchesOf.get(p.id) ?? []).every((k) => siemens[k] === 0));
	});
}

function conditionsInPlay(loom: Loom, evidence: Evidence): string[] {
	const named: string[] = [];
	for (const occasion of evidence.occasions) {
		for (const [name, holds] of Object.entries(occasion.functions))
			if (!holds) named.push(...loom.functions.filter((f) => f.function === name).map((f) => f.when));
		for (const code of occasion.codes ?? [])
			named.push(...loom.monitors.filter((m) => m.code === code).map((m) => m.when));
		named.push(...occasion.readings.filter((r) => r.what !== "ohms").map((r) => r.when));
	}
	if (named.length === 0) named.push(...loom.monitors.map((m) => m.when));
	const count = new Map<string, number>();
	for (const name of named) count.set(name, (count.get(name) ?? 0) + 1);
	return [...count]
		.sort((x, y) => y[1] - x[1])
		.map(([name]) => name)
		.slice(0, MOST_CONDITIONS);
}

/** Candidate readings, none of a forbidden circuit, none that was taken already or that the technician will not take. */
export function candidates(
	circuit: Circuit,
	leading: readonly Weighed[],
	evidence: Evidence,
	refused: readonly Question[] = [],
): Question[] {
	const { loom } = circuit;
	const ground = batteryMinus(loom);
	if (ground === undefined) return [];
	const contacts = new Set<string>();
	for (const { fault } of leading) for (const id of contactsOf(loom, fault?.path ?? [])) contacts.add(id);
	const list = [...contacts].filter((id) => forbidden(loom, id) === undefined).slice(0, MOST_CONTACTS);
	const questions: Question[] = [];
	for (const when of conditionsInPlay(loom, evidence))
		for (const from of list) questions.push({ what: "volts", from, to: ground, when });
	const dead = deadCondition(circuit);
	if (dead !== undefined) {
		for (const from of list) questions.push({ what: "ohms", from, to: ground, when: dead });
		for (const from of list)
			for (const wire of wiresAtContact(loom, from)) {
				const to = ends(wire).find((end) => end !== from);
				if (to !== undefined && from < to && forbidden(loom, to) === undefined)
					questions.push({ what: "ohms", from, to, when: dead });
			}
	}
	const taken = new Set([...evidence.occasions.flatMap((o) => o.readings), ...refused].map(keyOf));
	return questions.filter((q) => q.from !== q.to && !taken.has(keyOf(q)));
}

/** Neighbouring cavities of one connector: bridged by a strand, or with their terminals swapped. */
import type { Change } from "../../circuit/index.js";
import { type Contact, cavityNeighbours, wiresAtContact } from "../../loom/index.js";
import { joined } from "../patterns.js";
import { CHANCE, COMES_AND_GOES, connectorHands, HANDS } from "../rates.js";
import { sideOf } from "../side.js";
import type { Fault, FaultContext, FaultKind } from "../types.js";
import { contactWords, placeOf } from "../words.js";

/** Ohms of a strand across two cavities. */
const STRAND_OHMS = 0.1;

/** Every pair of neighbouring, wired contacts once. */
function pairs({ loom }: FaultContext): (readonly [Contact, Contact])[] {
	const found: (readonly [Contact, Contact])[] = [];
	for (const contact of loom.contacts.values()) {
		if (wiresAtContact(loom, contact.id).length === 0) continue;
		for (const next of cavityNeighbours(loom, contact))
			if (contact.id < next.id && wiresAtContact(loom, next.id).length > 0) found.push([contact, next]);
	}
	return found;
}

function handsOn(context: FaultContext, pair: readonly [Contact, Contact]): boolean {
	return pair.every((contact) => context.touched.contacts.has(contact.id));
}

export const bridged: FaultKind = {
	kind: "short to neighbour",
	title: "Neighbouring cavities bridged",
	source: "common practice, no source",
	list: (context) =>
		pairs(context).flatMap(([one, two]): Fault[] => {
			const a = sideOf(context, one.id);
			const b = sideOf(context, two.id);
			if (a === undefined || b === undefined) return [];
			const hands = connectorHands(context, one.connector);
			return [
				{
					id: `short to neighbour:${one.id}:${two.id}`,
					kind: "short to neighbour",
					where: `${contactWords(context.loom, one.id)} bridged to ${two.id}`,
					place: placeOf(context.loom, one.id),
					prior: CHANCE.neighbours * hands,
					patterns: [{ weight: 1, change: joined(a, b, STRAND_OHMS) }],
					shakenBy: "",
					comesAndGoes: COMES_AND_GOES.touch,
					inParts: [],
					path: [one.id, two.id],
					mend: `look into ${one.connector} between ${one.cavity} and ${two.cavity} for a stray strand or moisture`,
				},
			];
		}),
};

/** The wires crimped at two contacts change places: each crimp opens, and comes back at the other terminal. */
function exchanged(context: FaultContext, one: Contact, two: Contact): Change | undefined {
	const { circuit } = context;
	const crimps = (contact: Contact) =>
		(circuit.branchesOf.get(contact.id) ?? []).filter((k) => circuit.branches[k]!.owner.what === "crimp");
	const a = circuit.node(one.id);
	const b = circuit.node(two.id);
	if (a === undefined || b === undefined) return undefined;
	const branches = [];
	const added = [];
	for (const [from, to] of [
		[one, b],
		[two, a],
	] as const)
		for (const branch of crimps(from)) {
			branches.push({ branch, siemens: 0 });
			added.push({ a: circuit.branches[branch]!.a, b: to, siemens: 2000 });
		}
	return { branches, added };
}

export const swapped: FaultKind = {
	kind: "contacts swapped",
	title: "Terminals in each other's cavity",
	source: "common practice, no source",
	list: (context) =>
		pairs(context).flatMap(([one, two]): Fault[] => {
			// Only hands swap terminals: nothing untouched is listed.
			if (!handsOn(context, [one, two])) return [];
			const change = exchanged(context, one, two);
			if (change === undefined) return [];
			return [
				{
					id: `contacts swapped:${one.id}:${two.id}`,
					kind: "contacts swapped",
					where: `${contactWords(context.loom, one.id)} and ${two.id} in each other's cavity`,
					place: placeOf(context.loom, one.id),
					prior: CHANCE.swapped * HANDS.swapped,
					patterns: [{ weight: 1, change }],
					shakenBy: "",
					inParts: [],
					path: [one.id, two.id],
					mend: `compare wire colours in ${one.connector} cavities ${one.cavity} and ${two.cavity} with the table and change them over`,
				},
			];
		}),
};

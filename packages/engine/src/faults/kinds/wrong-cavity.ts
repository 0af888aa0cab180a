/** A terminal pushed into the cavity beside its own, which is empty. */
import type { Change, Circuit } from "../../circuit/index.js";
import { type Contact, cavityNeighbours, housingOf, wiresAtContact } from "../../loom/index.js";
import { CHANCE } from "../rates.js";
import type { Fault, FaultContext, FaultKind } from "../types.js";
import { contactWords, placeOf } from "../words.js";

/** Siemens of a crimp in its new terminal. */
const CRIMPED = 2000;

/** Every crimp of one contact comes off it and goes onto another. */
export function crimpsMoved(circuit: Circuit, from: string, to: string): Change | undefined {
	const node = circuit.node(to);
	const crimps = (circuit.branchesOf.get(from) ?? []).filter(
		(k) => circuit.branches[k]!.owner.what === "crimp",
	);
	if (node === undefined || crimps.length === 0) return undefined;
	return {
		branches: crimps.map((branch) => ({ branch, siemens: 0 })),
		added: crimps.map((branch) => ({ a: circuit.branches[branch]!.a, b: node, siemens: CRIMPED })),
	};
}

function list({ circuit, loom, touched }: FaultContext): Fault[] {
	const wired = (contact: Contact) => wiresAtContact(loom, contact.id).length > 0;
	return [...loom.contacts.values()].flatMap((contact): Fault[] => {
		// Only hands put a terminal into the wrong cavity: nothing untouched is listed.
		if (!touched.contacts.has(contact.id) || !wired(contact)) return [];
		const empty = cavityNeighbours(loom, contact).filter((next) => !wired(next));
		return empty.flatMap((next): Fault[] => {
			const change = crimpsMoved(circuit, contact.id, next.id);
			if (change === undefined) return [];
			const housing = housingOf(loom, contact);
			return [
				{
					id: `terminal in the wrong cavity:${contact.id}:${next.id}`,
					kind: "terminal in the wrong cavity",
					where: `terminal of ${contactWords(loom, contact.id)} in cavity ${next.cavity}`,
					place: placeOf(loom, contact.id),
					prior: CHANCE.wrongCavity / empty.length,
					patterns: [{ weight: 1, change }],
					shakenBy: "",
					inParts: [],
					path: [contact.id, next.id],
					mend: `see in which cavity of ${housing} the wire sits; release its terminal from ${next.cavity} and put it into ${contact.cavity}`,
				},
			];
		});
	});
}

export const wrongCavity: FaultKind = {
	kind: "terminal in the wrong cavity",
	title: "Terminal in the wrong cavity",
	source: "common practice, no source",
	list,
};

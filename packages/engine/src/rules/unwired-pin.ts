/** A fitted part must have its needed pins wired. */
import type { Circuit } from "../circuit/index.js";
import { deviceKinds } from "../devices/index.js";
import { type Contact, contactsOfPart, type Part, wiresAtContact } from "../loom/index.js";
import { finding } from "./support/finding.js";
import { contactText, list, partText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "unwired-pin";

/**
 * The pins a kind needs; of a switch each pair of which only one side is wired. A pair with neither side wired
 * is a spare. Control units and fuses have rules of their own.
 */
export const unwiredPin: Rule = {
	id,
	title: "Every fitted part has its pins wired",
	source: "pins that the kind of part cannot do without",
	check(circuit) {
		return [...circuit.loom.parts.values()].flatMap((part) => checkPart(circuit, part) ?? []);
	},
};

function checkPart(circuit: Circuit, part: Part): Finding | undefined {
	if (part.kind === "connector" || part.kind === "control unit" || part.kind === "fuse") return undefined;
	const contacts = contactsOfPart(circuit.loom, part.id);
	const wired = (contact: Contact) => wiresAtContact(circuit.loom, contact.id).length > 0;
	const missing = (part.kind === "switch" ? halves(part, contacts) : needed(part, contacts)).filter(
		(c) => !wired(c),
	);
	const none = !contacts.some(wired);
	const named = none ? contacts : missing;
	if (named.length === 0) return undefined;
	return finding(circuit, id, "warn", {
		where: `${partText(circuit.loom, part.id)}: ${list(named.map((contact) => contactText(circuit.loom, contact.id)))}`,
		why: none
			? "The part is fitted but nothing is wired to it."
			: "No wire is crimped here, and the part needs it.",
		mend: none
			? "Wire it, or take it out of the tables."
			: "Run the missing wire, or find the terminal that slipped out.",
		path: [part.id, ...named.map((contact) => contact.id)],
	});

	/** Contacts whose partner in a position is wired. */
	function halves(switched: Part, all: readonly Contact[]): Contact[] {
		const at = (role: string) => all.find((contact) => contact.role === role);
		const partners = switched.positions.flatMap(({ joins }) =>
			joins.flatMap(([a, b]) => [
				[at(a), at(b)],
				[at(b), at(a)],
			]),
		);
		return all.filter((contact) =>
			partners.some(([own, other]) => own === contact && other !== undefined && wired(other)),
		);
	}
}

function needed(part: Part, contacts: readonly Contact[]): Contact[] {
	const needs = deviceKinds.get(part.kind)?.needs ?? [];
	return contacts.filter((contact) => needs.includes(contact.role));
}

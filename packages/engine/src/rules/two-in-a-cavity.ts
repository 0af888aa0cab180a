/** A terminal in a plug takes one wire. */
import type { Circuit } from "../circuit/index.js";
import { type Contact, housingOf, type Wire, wiresAtContact } from "../loom/index.js";
import { finding } from "./support/finding.js";
import { contactText, list } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "two-in-a-cavity";

/** Contacts in a housing with more wires than one; as delivered a maker may have crimped two together, which is left. */
export const twoInACavity: Rule = {
	id,
	title: "Each terminal in a plug holds one wire",
	source: "one wire a crimp: common practice, no source",
	check(circuit, before) {
		return [...circuit.loom.contacts.values()].flatMap((contact) => {
			const wires = wiresAtContact(circuit.loom, contact.id);
			if (wires.length < 2 || housingOf(circuit.loom, contact) === "") return [];
			const known =
				before === undefined ? [] : wiresAtContact(before.loom, contact.id).map((wire) => wire.id);
			return wires.every((wire) => known.includes(wire.id)) ? [] : [report(circuit, contact, wires)];
		});
	},
};

function report(circuit: Circuit, contact: Contact, wires: readonly Wire[]): Finding {
	const { loom } = circuit;
	const wet = loom.parts.get(housingOf(loom, contact))?.marks.includes("wet") === true;
	return finding(circuit, id, "note", {
		where: contactText(loom, contact.id),
		why: `It holds ${list(wires.map((wire) => wire.id))}. One crimp does not hold two wires safely${wet ? ", and no seal closes around two" : ""}.`,
		mend: "Join the wires by a splice a hand's width behind the plug, and lead one wire into the cavity.",
		path: [contact.id, ...wires.map((wire) => wire.id)],
	});
}

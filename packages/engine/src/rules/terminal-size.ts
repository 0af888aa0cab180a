/** A wire must fit the terminal of its cavity. */
import type { Circuit } from "../circuit/index.js";
import { type Contact, housingOf, type Part, wiresAtContact } from "../loom/index.js";
import { finding } from "./support/finding.js";
import { contactText, list, wireText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "terminal-size";

/** A size in AWG may lie a little off the metric size it stands for. */
const SLACK = 0.02;

/** Wires together in a terminal, against `least_mm2` and `most_mm2` of the housing; a housing without them is not judged. */
export const terminalSize: Rule = {
	id,
	title: "Every wire fits its terminal",
	source: "`least_mm2` and `most_mm2` of the connector: its maker's figures",
	check(circuit) {
		return [...circuit.loom.contacts.values()].flatMap((contact) => {
			const housing = circuit.loom.parts.get(housingOf(circuit.loom, contact));
			return housing === undefined ? [] : (checkContact(circuit, contact, housing) ?? []);
		});
	},
};

function checkContact(circuit: Circuit, contact: Contact, housing: Part): Finding | undefined {
	const wires = wiresAtContact(circuit.loom, contact.id);
	const { least_mm2: least = 0, most_mm2: most = 0 } = housing.values;
	const mm2 = wires.reduce((sum, wire) => sum + wire.mm2, 0);
	const small = least > 0 && mm2 < least * (1 - SLACK);
	const large = most > 0 && mm2 > most * (1 + SLACK);
	if (wires.length === 0 || !(small || large)) return undefined;
	const range = [least > 0 ? `at least ${least} mm2` : "", most > 0 ? `at most ${most} mm2` : ""].filter(
		Boolean,
	);
	return finding(circuit, id, "warn", {
		where: `${contactText(circuit.loom, contact.id)}: ${list(wires.map((wire) => wireText(circuit.loom, wire.id)))}`,
		why: `The terminals of ${housing.id} take ${list(range)}. ${small ? "A thinner wire pulls out of the crimp" : "A thicker wire does not fill the crimp rightly or does not go in"}${small && housing.marks.includes("wet") ? ", and its seal does not close" : ""}.`,
		mend: small
			? "Use a wire of the right size for the last piece, or a terminal and seal made for this one."
			: "Step down by a splice behind the plug, or use a terminal made for this size.",
		path: [contact.id, ...wires.map((wire) => wire.id)],
	});
}

/** An input that a unit watches must not hang on nothing. */
import type { Circuit } from "../circuit/index.js";
import { type Contact, wiresAtContact } from "../loom/index.js";
import { isAlone, limitText, type SetCode, setCodes } from "./support/codes.js";
import { finding } from "./support/finding.js";
import { amount, contactText, list } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "floating-input";

/** Pins whose windows are passed and to which neither a part nor a ground point is joined: unused, or cut off. */
export const floatingInput: Rule = {
	id,
	title: "No input that hangs on nothing sets a code",
	source: "the units' own windows: monitors.csv",
	check(circuit) {
		const byPin = new Map<Contact, SetCode[]>();
		for (const code of setCodes(circuit)) {
			const pin = circuit.loom.contacts.get(code.monitor.contact);
			if (pin && isAlone(circuit, pin)) byPin.set(pin, [...(byPin.get(pin) ?? []), code]);
		}
		return [...byPin].map(([pin, codes]) => report(circuit, pin, codes));
	},
};

function report(circuit: Circuit, pin: Contact, codes: readonly SetCode[]): Finding {
	const [first] = codes as [SetCode];
	const { unit, when, measures } = first.monitor;
	const wires = wiresAtContact(circuit.loom, pin.id);
	const hangs = wires.length === 0 ? "has no wire" : "leads to no part";
	return finding(circuit, id, "warn", {
		where: contactText(circuit.loom, pin.id),
		why: `It ${hangs}, and ${unit} sees ${amount(first.value, measures === "amps" ? "A" : "V")} in '${when}', ${limitText(first)}: it sets ${list(codes.map(({ monitor }) => monitor.code))}.`,
		mend: "Join it to what it reads, tie it as the unit's maker wants an unused input tied, or have the unit coded so that it does not look.",
		path: [unit, pin.id, ...wires.map((wire) => wire.id)],
	});
}

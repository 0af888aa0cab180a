/** A sound car sets no trouble codes. */
import type { Circuit } from "../circuit/index.js";
import type { Contact } from "../loom/index.js";
import { isAlone, limitText, type SetCode, setCodes } from "./support/codes.js";
import { pinOf } from "./support/feeds.js";
import { finding } from "./support/finding.js";
import { isLoom, isThere } from "./support/nets.js";
import { namesAlong, reach } from "./support/ways.js";
import { amount, contactText, list } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "code-set";

/** One finding a pin. A pin on which nothing hangs is another rule's. */
export const codeSet: Rule = {
	id,
	title: "No unit sets a code on a sound car",
	source: "the units' own windows: monitors.csv",
	check(circuit) {
		const byPin = new Map<string, SetCode[]>();
		for (const code of setCodes(circuit)) {
			const { contact } = code.monitor;
			byPin.set(contact, [...(byPin.get(contact) ?? []), code]);
		}
		return [...byPin].flatMap(([contact, codes]) => {
			const pin = circuit.loom.contacts.get(contact);
			return pin === undefined || isAlone(circuit, pin) ? [] : [report(circuit, pin, codes)];
		});
	},
};

function report(circuit: Circuit, pin: Contact, codes: readonly SetCode[]): Finding {
	const [first] = codes as [SetCode];
	const { measures, twin, unit, when } = first.monitor;
	const ways = reach(circuit, [pinOf(circuit, pin)], (k) => isLoom(circuit, k) && isThere(circuit, k));
	const seen = `${amount(first.value, measures === "amps" ? "A" : "V")}${twin === "" ? "" : ` against its twin ${twin}`}`;
	const names = codes.map(({ monitor }) => `${monitor.code}${monitor.title && ` (${monitor.title})`}`);
	return finding(circuit, id, "warn", {
		where: contactText(circuit.loom, pin.id),
		why: `With every part sound ${unit} sees ${seen} here in '${when}', ${limitText(first)}, and sets ${list(names)}.`,
		mend: `Follow the wire from ${pin.id} to what it should be joined to, and find what is missing or too much.`,
		path: [unit, pin.id, ...namesAlong(circuit, ways.wayTo(ways.nodes.at(-1)!))],
	});
}

/** What worked as delivered must work as converted. */
import type { Circuit } from "../circuit/index.js";
import { finding } from "./support/finding.js";
import { removedOn } from "./support/removed.js";
import { namesAlong } from "./support/ways.js";
import { amount, partText } from "./support/words.js";
import { type Compared, carriedBy, lostLoads } from "./support/worked.js";
import type { Finding, Rule } from "./types.js";

const id = "load-lost";

/** Loads that both cars have, in each condition in which both stand whole. What hung on a removed part is another rule's. */
export const loadLost: Rule = {
	id,
	title: "Every load that worked as delivered still works",
	source: "off below half of the volts it had: common practice, no source",
	check(circuit, before) {
		if (before === undefined) return [];
		return lostLoads(circuit, before)
			.filter((lost) => removedOn(circuit, before, lost).length === 0)
			.map((lost) => report(circuit, before, lost));
	},
};

function report(circuit: Circuit, before: Circuit, lost: Compared): Finding {
	const { load, condition, before: was, now } = lost;
	const way = carriedBy(lost, (branches) => namesAlong(before, branches));
	return finding(circuit, id, "warn", {
		where: `${partText(circuit.loom, load.part.id)}${load.element && `, ${load.element}`}`,
		why: `In '${condition}' it had ${amount(was.volts, "V")} as delivered and has ${amount(now.volts, "V")} now.`,
		mend: "Compare the way shown, as delivered, with how it is wired now, and close the gap. If the car shall no longer have it, take it out.",
		path: way.filter((name) => exists(circuit, name)),
	});
}

const exists = ({ loom }: Circuit, name: string) =>
	[loom.parts, loom.contacts, loom.wires, loom.joints].some((table) => table.has(name));

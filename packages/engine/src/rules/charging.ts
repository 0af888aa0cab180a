/** The generator must be joined to the battery at both its posts. */
import type { Circuit } from "../circuit/index.js";
import { type Contact, contactsOfPart, type Part } from "../loom/index.js";
import { feedPasses, pinOf } from "./support/feeds.js";
import { finding } from "./support/finding.js";
import { earthOhms } from "./support/nets.js";
import { namesAlong, reach } from "./support/ways.js";
import { amount, contactText, partText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "charging";

/** Heavy cable and metal; more is a loose strap. */
export const MOST_GROUND_OHMS = 0.01;

/** B+ over the loom, fuses and contacts to a battery's plus; minus over loom and metal to its minus. */
export const charging: Rule = {
	id,
	title: "The generator is joined to the battery",
	source: `ground up to ${MOST_GROUND_OHMS * 1000} milliohm: common practice, no source`,
	check(circuit) {
		const { parts } = circuit.loom;
		const generators = [...parts.values()].filter((part) => part.kind === "generator");
		const pluses = [...parts.values()]
			.filter((part) => part.kind === "battery")
			.flatMap((part) => contactsOfPart(circuit.loom, part.id).filter((contact) => contact.role === "+"));
		return generators.flatMap((generator) => checkGenerator(circuit, generator, pluses));
	},
};

function checkGenerator(circuit: Circuit, generator: Part, pluses: readonly Contact[]): Finding[] {
	const posts = contactsOfPart(circuit.loom, generator.id);
	return posts.flatMap((post) => {
		const ways = reach(circuit, [pinOf(circuit, post)], feedPasses(circuit, true));
		const ohms = earthOhms(circuit, post.id);
		const joined =
			post.role === "B+" ? pluses.some((plus) => ways.has(pinOf(circuit, plus))) : ohms <= MOST_GROUND_OHMS;
		if (joined) return [];
		const what =
			post.role === "B+" || Number.isNaN(ohms)
				? "is not joined to the battery"
				: `has ${amount(ohms, "ohm")} to the battery's minus`;
		return finding(circuit, id, "warn", {
			where: `${partText(circuit.loom, generator.id)}: ${contactText(circuit.loom, post.id)}`,
			why: `It ${what}. The battery is not charged, and a running generator that loses the battery can harm every unit in the car.`,
			mend: "Run the heavy cable or ground strap that is missing, and tighten it.",
			path: [generator.id, post.id, ...namesAlong(circuit, ways.wayTo(ways.nodes.at(-1)!))],
		});
	});
}

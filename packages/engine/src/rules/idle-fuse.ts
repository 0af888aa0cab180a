/** A fuse behind which nothing is left should be pulled and its place marked free. */
import type { Circuit } from "../circuit/index.js";
import { contactsOfPart } from "../loom/index.js";
import { deadSides } from "./support/dead-sides.js";
import { feedPasses, pinOf } from "./support/feeds.js";
import { finding } from "./support/finding.js";
import { namesAlong, reach } from "./support/ways.js";
import { partText } from "./support/words.js";
import type { Rule } from "./types.js";

const id = "idle-fuse";

/** What only passes a feed on is no use of it: connectors, fuses, and the contacts of switches and relays. */
const PASSING: Readonly<Record<string, readonly string[] | "any">> = {
	connector: "any",
	fuse: "any",
	switch: "any",
	relay: ["30", "87", "87a"],
};

export const idleFuse: Rule = {
	id,
	title: "Every fuse feeds something",
	source: "a fuse without a part behind it: common practice, no source",
	check(circuit) {
		const users = usersByNode(circuit);
		const passes = feedPasses(circuit, true);
		return [...deadSides(circuit)].flatMap(([fuse, dead]) => {
			const ways = reach(
				circuit,
				[dead],
				(branch, to) => circuit.branches[branch]!.owner.id !== fuse && passes(branch, to),
			);
			if (ways.nodes.some((node) => users.has(node))) return [];
			return finding(circuit, id, "note", {
				where: partText(circuit.loom, fuse),
				why: "No part is left behind it. It keeps old wires live for nothing.",
				mend: `Pull ${fuse} and mark its place free.`,
				path: [fuse, ...namesAlong(circuit, ways.wayTo(ways.nodes.at(-1)!))],
			});
		});
	},
};

function usersByNode(circuit: Circuit): ReadonlySet<number> {
	const users = new Set<number>();
	for (const part of circuit.loom.parts.values()) {
		const passing = PASSING[part.kind] ?? [];
		if (passing === "any") continue;
		for (const contact of contactsOfPart(circuit.loom, part.id))
			if (!passing.includes(contact.role)) users.add(pinOf(circuit, contact));
	}
	return users;
}

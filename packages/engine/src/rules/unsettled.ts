/** A relay that switches itself off and on again is wired wrong. */
import { finding } from "./support/finding.js";
import { conditionsOf } from "./support/points.js";
import { list, partText } from "./support/words.js";
import type { Rule } from "./types.js";

const id = "unsettled";

/** A condition in which relays or units keep switching to and fro has no readings; every other rule leaves it out. */
export const unsettled: Rule = {
	id,
	title: "Relays come to rest in every condition",
	source: "the network's own states come back without settling",
	check(circuit) {
		return conditionsOf(circuit).unsettled.map(({ condition, message, parts }) =>
			finding(circuit, id, "stop", {
				where: list(parts.map((part) => partText(circuit.loom, part))) || condition,
				why: `In '${condition}' the network ${message}.`,
				mend: "Look for a coil that is fed or grounded through its own contact, or through a contact that it switches off.",
				path: parts,
			}),
		);
	},
};

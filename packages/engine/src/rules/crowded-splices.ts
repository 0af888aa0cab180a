/** Splices in one branch of the loom are set apart. */
import type { Circuit } from "../circuit/index.js";
import { type Joint, wiresAtJoint } from "../loom/index.js";
import { finding } from "./support/finding.js";
import { list } from "./support/words.js";
import type { Rule } from "./types.js";

const id = "crowded-splices";

/** Most splices side by side. */
export const MOST_SPLICES = 3;
/** Two splices are side by side where this length of wire or less joins them, in metres. */
export const NEAR_METRES = 0.05;

/**
 * Splices in one bundle that the tables put at one place, by the words of their `place`, and those joined by a piece
 * of wire no longer than a sleeve; where the loom as delivered is known, those with a new one among them. Where along its bundle a splice lies the tables do not say otherwise.
 */
export const crowdedSplices: Rule = {
	id,
	title: "Splices are set apart along the loom",
	source: `at most ${MOST_SPLICES} side by side: common practice, no source`,
	check(circuit, before) {
		const isNew = (joint: Joint) => before === undefined || !before.loom.joints.has(joint.id);
		return [...groups(circuit)].flatMap(([where, splices]) => {
			if (splices.length <= MOST_SPLICES || !splices.some(isNew)) return [];
			return finding(circuit, id, "note", {
				where: `${splices.length} splices at ${where}: ${list(splices.map((joint) => joint.id))}`,
				why: "Side by side they make a thick, stiff place in the loom that chafes and cannot be closed or sealed well.",
				mend: "Set them apart along the branch, each by more than the length of its sleeve.",
				path: splices.map((joint) => joint.id),
			});
		});
	},
};

function groups({ loom }: Circuit): Map<string, Joint[]> {
	const found = new Map<string, Joint[]>();
	const put = (key: string, joint: Joint) => {
		const known = found.get(key) ?? [];
		if (!known.includes(joint)) found.set(key, [...known, joint]);
	};
	for (const joint of loom.joints.values()) {
		if (joint.kind !== "splice") continue;
		const wires = wiresAtJoint(loom, joint.id);
		const bundles = new Set(wires.map((wire) => wire.bundle).filter((bundle) => bundle !== ""));
		if (joint.place !== "") for (const bundle of bundles) put(`${joint.place}, bundle ${bundle}`, joint);
		for (const wire of wires) {
			if (wire.metres > NEAR_METRES) continue;
			for (const end of [wire.from, wire.to]) {
				const other = end.at === "joint" ? loom.joints.get(end.joint) : undefined;
				if (other?.kind !== "splice" || other === joint) continue;
				put(`the wires around ${joint.id}`, joint);
				put(`the wires around ${joint.id}`, other);
			}
		}
	}
	return found;
}

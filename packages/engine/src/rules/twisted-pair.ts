/** A twisted pair must stay twisted through every splice in it. */
import type { Circuit } from "../circuit/index.js";
import { type Joint, wiresAtJoint } from "../loom/index.js";
import { finding } from "./support/finding.js";
import { jointText, list, wireText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "twisted-pair";

/** Longest untwisted piece in metres: 50 mm, from memory, SAE J1939 practice at a connector. */
export const UNTWISTED_METRES = 0.05;

/** At each splice that takes a wire of a pair, every other wire must belong to a pair too, or be very short. */
export const twistedPair: Rule = {
	id,
	title: "Twisted pairs stay twisted at their splices",
	source: `at most ${UNTWISTED_METRES * 1000} mm untwisted: from memory, SAE J1939 practice at a connector`,
	check(circuit) {
		return [...circuit.loom.joints.values()].flatMap((joint) => checkJoint(circuit, joint) ?? []);
	},
};

function checkJoint(circuit: Circuit, joint: Joint): Finding | undefined {
	if (joint.kind !== "splice") return undefined;
	const wires = wiresAtJoint(circuit.loom, joint.id);
	const paired = wires.filter((wire) => wire.pair !== "");
	const plain = wires.filter((wire) => wire.pair === "" && wire.metres > UNTWISTED_METRES);
	if (paired.length === 0 || plain.length === 0) return undefined;
	return finding(circuit, id, "warn", {
		where: `${jointText(circuit.loom, joint.id)}: ${list(plain.map((wire) => wireText(circuit.loom, wire.id)))}`,
		why: `${list(paired.map((wire) => wire.id))} ${paired.length === 1 ? "is" : "are"} twisted with a mate, ${list(plain.map((wire) => wire.id))} not. The pair picks up noise there.`,
		mend: "Carry on with a twisted pair, splice both its wires close together, and twist up to the splice.",
		path: [paired[0]!.id, joint.id, ...plain.map((wire) => wire.id)],
	});
}

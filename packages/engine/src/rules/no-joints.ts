/** Some wires must run in one piece: marked `no joints`, or part of a restraint circuit. */
import type { Circuit } from "../circuit/index.js";
import type { Wire } from "../loom/index.js";
import { finding } from "./support/finding.js";
import { jointText, wireText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "no-joints";

export const noJoints: Rule = {
	id,
	title: "Wires that must run in one piece have no splice",
	source: "marks `no joints` and `pyrotechnic` of the tables",
	check(circuit) {
		return [...circuit.loom.wires.values()].flatMap((wire) => checkWire(circuit, wire));
	},
};

function checkWire(circuit: Circuit, wire: Wire): Finding[] {
	const mark = ["pyrotechnic", "no joints"].find((word) => wire.marks.includes(word));
	if (mark === undefined) return [];
	return [wire.from, wire.to].flatMap((end) => {
		if (end.at !== "joint" || circuit.loom.joints.get(end.joint)?.kind !== "splice") return [];
		return finding(circuit, id, "stop", {
			where: `${wireText(circuit.loom, wire.id)} at ${jointText(circuit.loom, end.joint)}`,
			why: `The wire is marked '${mark}' but ends in a splice.`,
			mend:
				mark === "pyrotechnic"
					? "Do not repair it here: the maker's procedure only."
					: "Fit one whole wire from contact to contact.",
			path: [wire.id, end.joint],
		});
	});
}

/** A splice needs room behind a connector. */
import type { Circuit } from "../circuit/index.js";
import { type Joint, type Wire, wiresAtJoint } from "../loom/index.js";
import { finding } from "./support/finding.js";
import { contactText, jointText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "splice-near-connector";

/** Least length of wire between a splice and a plug, in metres: the sleeve's own length and one bend. */
export const LEAST_METRES = 0.04;

/** By the length of each wire from a splice to a contact in a housing; an in-line connector's contacts too. */
export const spliceNearConnector: Rule = {
	id,
	title: "No splice sits right behind a connector",
	source: `${LEAST_METRES * 1000} mm: common practice, no source`,
	check(circuit) {
		return [...circuit.loom.joints.values()]
			.filter((joint) => joint.kind === "splice")
			.flatMap((joint) =>
				wiresAtJoint(circuit.loom, joint.id).flatMap((wire) => checkWire(circuit, joint, wire) ?? []),
			);
	},
};

function checkWire(circuit: Circuit, joint: Joint, wire: Wire): Finding | undefined {
	const { loom } = circuit;
	if (wire.metres >= LEAST_METRES) return undefined;
	const far = [wire.from, wire.to].find((end) => end.at === "contact");
	const contact = far?.at === "contact" ? loom.contacts.get(far.contact) : undefined;
	const inLine = loom.parts.get(contact?.part ?? "")?.kind === "connector";
	if (contact === undefined || (contact.connector === "" && !inLine)) return undefined;
	return finding(circuit, id, "warn", {
		where: `${jointText(loom, joint.id)}, ${Math.round(wire.metres * 1000)} mm from ${contactText(loom, contact.id)}`,
		why: `The wire between them cannot bend: it pulls at the crimp and at the seal. At least ${LEAST_METRES * 1000} mm are needed.`,
		mend: "Move the splice along the loom, away from the connector.",
		path: [joint.id, wire.id, contact.id],
	});
}

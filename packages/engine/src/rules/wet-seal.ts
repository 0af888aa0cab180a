/** What lies in the wet must be sealed. */
import type { Circuit } from "../circuit/index.js";
import { contactsInConnector, wiresAtContact, wiresAtJoint } from "../loom/index.js";
import { finding } from "./support/finding.js";
import { jointText, partText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "wet-seal";

/**
 * Connectors and splices marked `unsealed` that are marked `wet`, and splices marked `unsealed` of which a wire goes
 * straight to a wet connector. What carries no mark is taken for sealed.
 */
export const wetSeal: Rule = {
	id,
	title: "Connectors and splices in the wet are sealed",
	source: "marks `wet` and `unsealed` of the tables; common practice, no source",
	check(circuit) {
		const { parts, joints } = circuit.loom;
		const plugs = [...parts.values()]
			.filter((part) => isUnsealed(part) && part.marks.includes("wet"))
			.map((part) => report(circuit, part.id, partText(circuit.loom, part.id), wiresOf(circuit, part.id)));
		const splices = [...joints.values()]
			.filter((joint) => joint.kind === "splice" && isUnsealed(joint))
			.filter((joint) => joint.marks.includes("wet") || nearWet(circuit, joint.id))
			.map((joint) =>
				report(
					circuit,
					joint.id,
					jointText(circuit.loom, joint.id),
					wiresAtJoint(circuit.loom, joint.id).map((wire) => wire.id),
				),
			);
		return [...plugs, ...splices];
	},
};

const isUnsealed = (thing: { readonly marks: readonly string[] }) => thing.marks.includes("unsealed");

function wiresOf({ loom }: Circuit, connector: string): string[] {
	return contactsInConnector(loom, connector).flatMap((pin) =>
		wiresAtContact(loom, pin.id).map((wire) => wire.id),
	);
}

function nearWet({ loom }: Circuit, joint: string): boolean {
	return wiresAtJoint(loom, joint).some((wire) =>
		[wire.from, wire.to].some((end) => {
			const contact = end.at === "contact" ? loom.contacts.get(end.contact) : undefined;
			return contact !== undefined && loom.parts.get(contact.connector)?.marks.includes("wet");
		}),
	);
}

function report(circuit: Circuit, thing: string, where: string, wires: readonly string[]): Finding {
	return finding(circuit, id, "warn", {
		where,
		why: "It lies in the wet and is not sealed. Water creeps along the strands, and the joint corrodes to an open or a leak to its neighbours.",
		mend: "Use a sealed plug with a seal on every wire and in every empty cavity, or a sleeve with sealing glue.",
		path: [thing, ...wires],
	});
}

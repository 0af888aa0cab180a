/** A signal must be grounded on the metal on which its unit is grounded. */
import type { Circuit } from "../circuit/index.js";
import { type Contact, contactsOfPart, endName, type Joint, type Part, wiresAtJoint } from "../loom/index.js";
import { pinOf } from "./support/feeds.js";
import { finding } from "./support/finding.js";
import { isLoom, isThere, netAt } from "./support/nets.js";
import { sensorSignals } from "./support/sensors.js";
import { namesAlong, reach } from "./support/ways.js";
import { contactText, jointText, partText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "ground-metal";

interface Grounded {
	readonly part: Part;
	/** The part's contact on the ground side. */
	readonly back: Contact;
	readonly input: Contact;
}

/**
 * Switches and sensors read by a unit whose own grounds are all on one metal, body or engine. Between the two the strap
 * lies, and the starter's and generator's currents lift one against the other. A ground that was wired so as delivered
 * is the maker's.
 */
export const groundMetal: Rule = {
	id,
	title: "New grounds of signals are on their unit's metal",
	source: "currents of starter and generator flow between engine and body: common practice, no source",
	check(circuit, before) {
		if (before === undefined) return [];
		return [...switches(circuit), ...sensors(circuit)].flatMap(
			(one) => checkGround(circuit, before, one) ?? [],
		);
	},
};

/** Inputs with a switch that closes them to its other contact. */
function switches(circuit: Circuit): Grounded[] {
	const { parts, contacts } = circuit.loom;
	const inputs = [...contacts.values()].filter(
		(pin) => pin.role.startsWith("input ") && parts.get(pin.part)?.kind === "control unit",
	);
	const byNet = new Map(inputs.map((pin) => [netAt(circuit, pin.id), pin]));
	return [...parts.values()].flatMap((part) => {
		if (part.kind !== "switch") return [];
		const pin = (role: string) =>
			contactsOfPart(circuit.loom, part.id).find((contact) => contact.role === role);
		return part.positions.flatMap(({ joins }) =>
			joins.flatMap(([a, b]) =>
				[
					[pin(a), pin(b)],
					[pin(b), pin(a)],
				].flatMap(([signal, back]) => {
					const input = signal && byNet.get(netAt(circuit, signal.id));
					return input && back ? [{ part, back, input }] : [];
				}),
			),
		);
	});
}

const sensors = (circuit: Circuit): Grounded[] =>
	sensorSignals(circuit).map(({ sensor, back, input }) => ({ part: sensor, back, input }));

/** The ground point that a pin comes to first, and the way there; a strap beyond it is the car's, not the pin's. */
function groundOf(circuit: Circuit, contact: Contact): { joint: Joint; path: string[] } | undefined {
	const byNode = new Map<number, Joint>();
	for (const joint of circuit.loom.joints.values())
		if (joint.kind === "ground") byNode.set(circuit.node(joint.id) ?? -1, joint);
	const ways = reach(circuit, [pinOf(circuit, contact)], (k) => isLoom(circuit, k) && isThere(circuit, k));
	const first = ways.nodes.find((node) => byNode.has(node));
	return first === undefined
		? undefined
		: { joint: byNode.get(first)!, path: namesAlong(circuit, ways.wayTo(first)) };
}

function checkGround(circuit: Circuit, before: Circuit, one: Grounded): Finding | undefined {
	const { loom } = circuit;
	const own = groundOf(circuit, one.back);
	if (own === undefined) return undefined;
	const { joint: ground, path } = own;
	const metals = new Set(
		contactsOfPart(loom, one.input.part)
			.filter((pin) => pin.role === "ground")
			.flatMap((pin) => groundOf(circuit, pin)?.joint.metal ?? []),
	);
	if (metals.size !== 1 || metals.has(ground.metal)) return undefined;
	const last = wiresAtJoint(loom, ground.id).find((wire) => path.includes(wire.id));
	const was = before.loom.wires.get(last?.id ?? "");
	if (was !== undefined && [endName(was.from), endName(was.to)].includes(ground.id)) return undefined;
	const [metal] = metals;
	return finding(circuit, id, "warn", {
		where: `${partText(loom, one.part.id)}: ${contactText(loom, one.back.id)} at ${jointText(loom, ground.id)}`,
		why: `${one.input.part}, which reads it at ${one.input.id}, is grounded on the ${metal}, this on the ${ground.metal}. While the engine is started or the battery charged the one is lifted against the other, and the signal with it.`,
		mend: `Ground it on the ${metal}, near ${one.input.part}.`,
		path: [one.input.part, one.input.id, one.part.id, ...path],
	});
}

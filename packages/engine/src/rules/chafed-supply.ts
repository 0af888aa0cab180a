/** A sensor supply must not run on into a stub that nobody needs: one chafe there takes its sensors away. */
import { type Circuit, pinNode, wireEndNode } from "../circuit/index.js";
import { type Contact, contactsOfPart, type Wire } from "../loom/index.js";
import { finding } from "./support/finding.js";
import { loomOhmsBetween, netAt, netOf } from "./support/nets.js";
import { SENSOR_KINDS } from "./support/sensors.js";
import { pinSetting } from "./support/unit-pins.js";
import { amount, contactText, list, wireText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "chafed-supply";

/** Ohms of a chafed wire against the body: common practice, no source. */
const CHAFED_OHMS = 0.1;

/**
 * Wires with a loose end, isolated or not, on the conductor of a `sensor supply`. Shorted to the body there, the supply is
 * asked for its volts over its own ohms, the loom's and the chafe's; over its limit the unit takes it away.
 */
export const chafedSupply: Rule = {
	id,
	title: "No unused stub hangs on a sensor supply",
	source: "a short of 0.1 ohm at the stub: common practice, no source",
	check(circuit) {
		const supplies = [...circuit.loom.contacts.values()].filter(
			(pin) => pin.role === "sensor supply" && circuit.loom.parts.get(pin.part)?.kind === "control unit",
		);
		if (supplies.length === 0) return [];
		const byNet = new Map(supplies.map((pin) => [netAt(circuit, pin.id), pin]));
		return [...circuit.loom.wires.values()].flatMap((wire) => {
			if (wire.from.at !== "loose" && wire.to.at !== "loose") return [];
			const pin = byNet.get(netOf(circuit, circuit.node(wireEndNode(wire.id, "from"))!));
			return pin === undefined ? [] : (shorted(circuit, wire, pin) ?? []);
		});
	},
};

function shorted(circuit: Circuit, wire: Wire, pin: Contact): Finding | undefined {
	const end = circuit.node(wireEndNode(wire.id, wire.from.at === "loose" ? "from" : "to"))!;
	const setting = (name: string) => pinSetting(circuit, pin, name)!;
	const ohms = setting("ohms") + loomOhmsBetween(circuit, circuit.node(pinNode(pin.id))!, end) + CHAFED_OHMS;
	const [amps, limit] = [setting("volts") / ohms, setting("limit_amps")];
	const sensors = sensorsOn(circuit, netAt(circuit, pin.id));
	if (amps < limit || sensors.length === 0) return undefined;
	return finding(circuit, id, "note", {
		where: `${wireText(circuit.loom, wire.id)}, on ${contactText(circuit.loom, pin.id)}`,
		why: `It leads to nothing but has the sensor supply on it. Chafed through to the body it would draw ${amount(amps, "A")}; made for ${amount(limit, "A")}, the supply is taken away, and ${list(sensors)} ${sensors.length === 1 ? "goes" : "go"} with it.`,
		mend: "Take the stub off at the splice or connector where it leaves the supply.",
		path: [pin.part, pin.id, wire.id],
	});
}

function sensorsOn(circuit: Circuit, net: number): string[] {
	return [...circuit.loom.parts.values()]
		.filter(
			(part) =>
				SENSOR_KINDS.has(part.kind) &&
				contactsOfPart(circuit.loom, part.id).some(
					(pin) => pin.role === "supply" && netAt(circuit, pin.id) === net,
				),
		)
		.map((part) => part.id);
}

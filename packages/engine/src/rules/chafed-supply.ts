/** A sensor supply must not run on into a stub that nobody needs: one chafe there takes its sensors away. */
import { type Circuit, operate, wireEndNode } from "../circuit/index.js";
import { type Contact, contactsOfPart, type Wire } from "../loom/index.js";
import { finding } from "./support/finding.js";
import { netAt, netOf } from "./support/nets.js";
import { wholeConditions } from "./support/points.js";
import { SENSOR_KINDS } from "./support/sensors.js";
import { isPowered, pinVolts } from "./support/unit-pins.js";
import { amount, contactText, list, wireText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

const id = "chafed-supply";

/** Ohms of a chafed wire against the body: common practice, no source. */
const CHAFED_OHMS = 0.1;
/** A supply below this share of its volts is gone. */
const GONE_SHARE = 0.9;

/** Wires with a loose end, isolated or not, on the conductor of a `sensor supply`: shorted to the body by the network. */
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
	const base = wholeConditions(circuit).find(({ point }) => isPowered(point, pin.part));
	if (base === undefined) return undefined;
	const a = circuit.node(wireEndNode(wire.id, wire.from.at === "loose" ? "from" : "to"))!;
	const added = [{ a, b: -1, siemens: 1 / CHAFED_OHMS }];
	const point = operate(circuit, base.point.standing, { change: { branches: [], added } });
	const [had, has] = [base.point, point].map((at) => pinVolts(at, pin.id)) as [number, number];
	const sensors = sensorsOn(circuit, netAt(circuit, pin.id));
	if (has > GONE_SHARE * had || sensors.length === 0) return undefined;
	return finding(circuit, id, "note", {
		where: `${wireText(circuit.loom, wire.id)}, on ${contactText(circuit.loom, pin.id)}`,
		why: `It leads to nothing but has the sensor supply on it. Chafed through to the body it pulls the supply from ${amount(had, "V")} to ${amount(has, "V")}, and ${list(sensors)} ${sensors.length === 1 ? "goes" : "go"} with it.`,
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

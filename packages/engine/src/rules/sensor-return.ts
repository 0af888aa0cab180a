/** A sensor's return must come back to the control unit that reads its signal. */

import type { Circuit } from "../circuit/index.js";
import { pinNode } from "../circuit/index.js";
import { type Contact, contactsOfPart } from "../loom/index.js";
import { finding } from "./support/finding.js";
import { groundNets, isLoom, isThere, loomOhms, netAt } from "./support/nets.js";
import { type SensorSignal, sensorSignals, unitPins } from "./support/sensors.js";
import { namesAlong, type Reach, reach } from "./support/ways.js";
import { amount, contactText, list, partText } from "./support/words.js";
import type { Finding, Rule } from "./types.js";

/** More than this from the sensor to the unit's return pin is a bad joint, not a wire. */
export const MOST_OHMS = 5;

const id = "sensor-return";

/**
 * Counts the loom only: wires, crimps, mated contacts, joints; never a way through a device or the car's metal.
 * A unit without a `sensor return` pin takes its returns at its ground: there the car's ground points count.
 */
export const sensorReturn: Rule = {
	id,
	title: "Each sensor's return reaches the return pin of the unit that reads it",
	source: `up to ${MOST_OHMS} ohm from sensor to unit: common practice, no source`,
	check(circuit) {
		return sensorSignals(circuit).flatMap((signal) => checkSignal(circuit, signal) ?? []);
	},
};

function checkSignal(circuit: Circuit, found: SensorSignal): Finding | undefined {
	const { loom } = circuit;
	const { sensor, back, input } = found;
	const pins = contactsOfPart(loom, input.part);
	const returns = pins.filter((pin) => pin.role === "sensor return");
	const wanted = returns.length > 0 ? returns : pins.filter((pin) => pin.role === "ground");
	const ways = wanted.map((pin) => ({ pin, ohms: loomOhms(circuit, back.id, pin.id) }));
	if (ways.some(({ ohms }) => ohms < MOST_OHMS)) return undefined;
	if (returns.length === 0 && groundNets(circuit).has(netAt(circuit, back.id))) return undefined;
	const high = ways.find(({ ohms }) => !Number.isNaN(ohms));
	const pinNames = list(wanted.map((pin) => contactText(loom, pin.id)));
	const loomWays = reach(
		circuit,
		[circuit.node(pinNode(back.id))!],
		(k) => isLoom(circuit, k) && isThere(circuit, k),
	);
	return finding(circuit, id, "stop", {
		where: `${partText(loom, sensor.id)}: return ${contactText(loom, back.id)}`,
		why: high
			? `${amount(high.ohms, "ohm")} lie between it and ${contactText(loom, high.pin.id)}; at most ${MOST_OHMS} ohm are right. ${input.part} reads the sensor at ${input.id} and will read it wrong.`
			: `${input.part} reads the sensor at ${input.id}, but the return does not come back to ${input.part}: it ${endsAt(circuit, input.part, back)}. The reading is wrong or missing.`,
		mend: high
			? `Mend the joint or wire with the high resistance between ${back.id} and ${high.pin.id}.`
			: `Run the return of ${sensor.id} to ${pinNames || `a ground of ${input.part}`}. Do not take another ground for it.`,
		path: [...signalPath(circuit, found), sensor.id, ...furthest(circuit, loomWays)],
	});
}

/** Where the return goes instead. */
function endsAt(circuit: Circuit, unit: string, back: Contact): string {
	const net = netAt(circuit, back.id);
	if (groundNets(circuit).has(net)) return "goes to a ground of the car";
	const others = (unitPins(circuit).get(net) ?? []).filter(
		(pin) => pin.part !== unit || pin.role !== "sensor return",
	);
	if (others.length === 0) return "ends before it reaches any unit";
	return `goes to ${list(others.map((pin) => contactText(circuit.loom, pin.id)))}`;
}

function signalPath(circuit: Circuit, { signal, input }: SensorSignal): string[] {
	const from = circuit.node(pinNode(input.id))!;
	const ways = reach(circuit, [from], (k) => isLoom(circuit, k) && isThere(circuit, k));
	return [input.id, ...namesAlong(circuit, ways.wayTo(circuit.node(pinNode(signal.id))!))];
}

/** The longest way that the return runs. */
function furthest(circuit: Circuit, ways: Reach): string[] {
	return namesAlong(circuit, ways.wayTo(ways.nodes.at(-1)!));
}

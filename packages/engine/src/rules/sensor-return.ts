/** A sensor's return must come back to the control unit that reads its signal. */

import type { Circuit } from "../circuit/index.js";
import { pinNode } from "../circuit/index.js";
import { type Contact, contactsOfPart, wiresAtContact } from "../loom/index.js";
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
		const groups = new Map<string, Astray[]>();
		for (const signal of sensorSignals(circuit)) {
			const astray = checkSignal(circuit, signal);
			if (astray === undefined) continue;
			// Sensors whose returns meet and do not arrive have one cause.
			const key = `${netAt(circuit, signal.back.id)} ${signal.input.part} ${astray.high?.pin.id}`;
			groups.set(key, [...(groups.get(key) ?? []), astray]);
		}
		return [...groups.values()].map((group) => report(circuit, group));
	},
};

interface Astray extends SensorSignal {
	/** Where it should arrive. */
	readonly wanted: readonly Contact[];
	/** A pin that it does reach, over too many ohms. */
	readonly high: { readonly pin: Contact; readonly ohms: number } | undefined;
}

function checkSignal(circuit: Circuit, signal: SensorSignal): Astray | undefined {
	const pins = contactsOfPart(circuit.loom, signal.input.part);
	const returns = pins.filter((pin) => pin.role === "sensor return");
	const wanted = returns.length > 0 ? returns : pins.filter((pin) => pin.role === "ground");
	const ways = wanted.map((pin) => ({ pin, ohms: loomOhms(circuit, signal.back.id, pin.id) }));
	if (ways.some(({ ohms }) => ohms < MOST_OHMS)) return undefined;
	if (returns.length === 0 && groundNets(circuit).has(netAt(circuit, signal.back.id))) return undefined;
	return { ...signal, wanted, high: ways.find(({ ohms }) => !Number.isNaN(ohms)) };
}

function report(circuit: Circuit, group: readonly Astray[]): Finding {
	const { loom } = circuit;
	const first = group[0]!;
	const { back, input, high, sensor } = first;
	const unit = input.part;
	const rest = reach(
		circuit,
		[circuit.node(pinNode(back.id))!],
		(k) => isLoom(circuit, k) && isThere(circuit, k),
	);
	const reads = `${unit} reads ${list(group.map((one) => `${one.sensor.id} at ${one.input.id}`))}`;
	return finding(circuit, id, "stop", {
		where: list(
			group.map((one) => `${partText(loom, one.sensor.id)}: return ${contactText(loom, one.back.id)}`),
		),
		why: high
			? `${amount(high.ohms, "ohm")} lie between it and ${contactText(loom, high.pin.id)}; at most ${MOST_OHMS} ohm are right. ${reads}, and will read it wrong.`
			: `${reads}, but the return does not come back to ${unit}: it ${endsAt(circuit, unit, back)}. The readings are wrong or missing.`,
		mend: high
			? `Mend the joint or wire with the high resistance between ${back.id} and ${high.pin.id}.`
			: `Run the return to ${first.wanted.length > 0 ? unit : `a ground of ${unit}`}${pinsText(circuit, first.wanted)}. Do not take another ground for it.`,
		path: [...signalPath(circuit, first), sensor.id, ...furthest(circuit, rest)],
	});
}

/** Pins that may take it: those without a wire first, at most four. */
function pinsText(circuit: Circuit, pins: readonly Contact[]): string {
	const free = pins.filter((pin) => wiresAtContact(circuit.loom, pin.id).length === 0);
	const named = free.length > 0 ? free : pins;
	return named.length === 0 || named.length > 4 ? "" : `, ${named.map((pin) => pin.id).join(" or ")}`;
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

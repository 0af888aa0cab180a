/** Sensors of a loom and the control-unit inputs that their signals reach. */
import type { Circuit } from "../../circuit/index.js";
import { type Contact, contactsOfPart, type Part } from "../../loom/index.js";
import { netAt } from "./nets.js";

export const SENSOR_KINDS: ReadonlySet<string> = new Set([
	"thermistor",
	"potentiometer",
	"ratio sensor",
	"position sensor",
	"hall sensor",
	"coil sensor",
	"lambda sensor",
]);

/** Pin roles of a control unit that read a signal. */
export const INPUT_ROLES: ReadonlySet<string> = new Set(["input pull-up", "input pull-down", "reference"]);

export interface SensorSignal {
	readonly sensor: Part;
	readonly signal: Contact;
	/** The other side: what must come back to the same unit. */
	readonly back: Contact;
	/** The unit's input that the signal reaches. */
	readonly input: Contact;
}

const unitPinCache = new WeakMap<Circuit, ReadonlyMap<number, readonly Contact[]>>();

/** Contacts of control units by the net they are on. */
export function unitPins(circuit: Circuit): ReadonlyMap<number, readonly Contact[]> {
	let pins = unitPinCache.get(circuit);
	if (pins === undefined) {
		pins = findUnitPins(circuit);
		unitPinCache.set(circuit, pins);
	}
	return pins;
}

function findUnitPins(circuit: Circuit): Map<number, Contact[]> {
	const pins = new Map<number, Contact[]>();
	for (const part of circuit.loom.parts.values()) {
		if (part.kind !== "control unit") continue;
		for (const contact of contactsOfPart(circuit.loom, part.id)) {
			const net = netAt(circuit, contact.id);
			const list = pins.get(net);
			if (list) list.push(contact);
			else pins.set(net, [contact]);
		}
	}
	return pins;
}

/** Each sensor whose signal is read by a unit; once per unit. A sensor read between two inputs has no return. */
export function sensorSignals(circuit: Circuit): SensorSignal[] {
	const pins = unitPins(circuit);
	const inputs = (contact: Contact) =>
		(pins.get(netAt(circuit, contact.id)) ?? []).filter((pin) => INPUT_ROLES.has(pin.role));
	const found: SensorSignal[] = [];
	for (const sensor of circuit.loom.parts.values()) {
		if (!SENSOR_KINDS.has(sensor.kind)) continue;
		const contacts = contactsOfPart(circuit.loom, sensor.id);
		const a = contacts.find((c) => c.role === "signal" || c.role === "a");
		const b = contacts.find((c) => c.role === "return" || c.role === "b");
		if (a === undefined || b === undefined) continue;
		const twoWire = a.role === "a";
		if (twoWire && inputs(a).length > 0 && inputs(b).length > 0) continue;
		const [signal, back] = twoWire && inputs(a).length === 0 ? [b, a] : [a, b];
		const units = new Set<string>();
		for (const input of inputs(signal)) {
			if (units.has(input.part)) continue;
			units.add(input.part);
			found.push({ sensor, signal, back, input });
		}
	}
	return found;
}
